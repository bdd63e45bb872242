using CapPrep.Service.Results;
using Shouldly;
using Xunit;

namespace CapPrep.Service.Tests.Results;

public sealed class DrawingTurnTests
{
    [Fact]
    public async Task Many_who_ask_at_once_draw_one_after_the_other()
    {
        using var turn = new DrawingTurn();
        var (inside, most) = (0, 0);

        async Task<int> Draw()
        {
            most = Math.Max(most, Interlocked.Increment(ref inside));
            await Task.Yield();
            return Interlocked.Decrement(ref inside);
        }

        await Task.WhenAll(Enumerable.Range(0, 20).Select(_ => Task.Run(() => turn.Take(Draw, CancellationToken.None))));

        most.ShouldBe(1);
    }

    [Fact]
    public async Task A_drawing_that_fails_gives_its_turn_back()
    {
        using var turn = new DrawingTurn();

        await Should.ThrowAsync<InvalidDataException>(() => turn.Take<int>(() => throw new InvalidDataException(), CancellationToken.None));

        (await turn.Take(() => Task.FromResult(7), CancellationToken.None)).ShouldBe(7);
    }
}
