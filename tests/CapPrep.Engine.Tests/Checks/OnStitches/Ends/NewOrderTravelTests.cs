using CapPrep.Engine.Checks;
using CapPrep.Engine.Checks.OnStitches.Ends;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Pieces;
using CapPrep.Engine.Seating;
using CapPrep.Engine.Sequence.Planning;
using CapPrep.Engine.Tapes;
using CapPrep.TestKit.Faults;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Checks.OnStitches.Ends;

/// <summary>A tape in a new order lays no thread open that the received one had not.</summary>
public sealed class NewOrderTravelTests
{
    // From here on loose thread is a note (house); what two readings of one thread may differ by. mm.
    private const double LooseFrom = 2;
    private const double Room = 0.5;

    [Theory]
    [InlineData("order.bottom-up")]
    [InlineData("order.center-out")]
    [InlineData("order.tagline-first")]
    [InlineData("border.late")]
    public void No_thread_lies_loose_that_did_not_before(string rule)
    {
        var sewn = 0;
        foreach (var number in Enumerable.Range(1, 5))
        {
            var request = CorpusOrder.Request(FaultCorpus.Corpus.Planted(rule, number).Bad);
            if (CapPrepper.Prepare(request) is not { Order.Used: UsedOrder.Proposed, TapeToSew: { } written })
                continue;
            sewn++;
            var before = Ways(request, request.Tape).GroupBy(way => (way.From, way.To)).ToDictionary(same => same.Key, same => same.Max(way => way.OpenMm));
            var loose = Ways(request, TapeReader.Read(written.Bytes, TapeReading.Standard).Value!).Where(way => way.OpenMm > LooseFrom + Room);
            loose.Where(way => before.GetValueOrDefault((way.From, way.To)) <= LooseFrom).ShouldBeEmpty($"{rule} {number}");
        }

        sewn.ShouldBePositive();
    }

    /// <summary>Every thread longer than the limit, from the lower left corner of the design, and what of it lies open.</summary>
    private static IEnumerable<(TapePoint From, TapePoint To, double OpenMm)> Ways(PrepareRequest request, Tape tape)
    {
        var stitches = StitchSequence.Of(tape, request.Setup.Machine.Tape.TrimCount);
        var moves = new LooseMoves(new Subject(tape, stitches, request.Ticket, request.Setup, Seater.Seat(stitches, request.Ticket, request.Setup)));
        var box = stitches.BoxOf(new(0, stitches.Count - 1));
        var corner = new TapePoint(box.Left, box.Bottom);
        return Enumerable.Range(1, stitches.Count - 1)
            .Where(point => stitches.Relations[point] == Relation.Thread && Fine.Millimeters(Fine.Length(stitches.At(point) - stitches.At(point - 1))) > LooseFrom)
            .Select(point => (stitches.At(point - 1) - corner, stitches.At(point) - corner, moves.OpenMm(point)));
    }
}
