using CapPrep.Engine.Drafting;
using CapPrep.Engine.Measures;
using CapPrep.TestKit.Tapes;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Lettering;

/// <summary>What stands in a row and is no text.</summary>
public sealed class NoLineTests
{
    public static TheoryData<string> Names => [.. Drafts.Keys];

    private static readonly IReadOnlyDictionary<string, Func<Draft>> Drafts = new Dictionary<string, Func<Draft>>
    {
        ["a comb of bars"] = () => TapeBuilder.Letters(9),
        ["bars of two heights"] = () => Bars(index => index % 2 == 0 ? 80 : 120),
        ["bars that grow"] = () => Bars(index => 60 + (10 * index)),
        ["a fence"] = Fence,
        ["one shape repeated"] = () => Repeated(7, Arrow),
        ["crosses in a row"] = () => Repeated(6, Cross),
        ["rings in a row"] = () => Repeated(6, Ring),
        ["a crest"] = TapeBuilder.Crest,
        ["dashes of a seam"] = () => Dashes(0),
        ["dashes of a seam on an arc"] = () => Dashes(60),
        ["a zigzag"] = Zigzag,
        ["a wave"] = Wave,
        ["leaves on a stem"] = Leaves,
        ["a crown"] = Crown,
    };

    [Theory]
    [MemberData(nameof(Names))]
    public void Nothing_is_read_into_it(string name) => Lines.Of(Drafts[name]()).ShouldBeEmpty();

    [Fact]
    public void Nothing_is_read_into_designs_by_chance() =>
        Enumerable.Range(0, 60)
            .Where(number => Lines.Of(RandomDesign.Of(number).Draft.ToTape("TEST")).Any(line => line.Sure))
            .ShouldBeEmpty();

    private static Draft Bars(Func<int, int> height)
    {
        var draft = new Draft();
        for (var bar = 0; bar < 8; bar++)
            Columns(draft, Column.Upright(new(-280 + (70 * bar), 0), 20, height(bar)));
        return draft;
    }

    private static Draft Fence()
    {
        var draft = Bars(_ => 120);
        Columns(draft, Level(-300, 30, 560), Level(-300, 80, 560));
        return draft;
    }

    private static Draft Repeated(int times, Func<int, Column[]> shape)
    {
        var draft = new Draft();
        for (var index = 0; index < times; index++)
            Columns(draft, shape(-300 + (index * 100)));
        return draft;
    }

    private static Column[] Arrow(int x) => [Column.Upright(new(x + 20, 0), 16, 90), Slanted(x, 50, 25, 45), Slanted(x + 30, 95, 25, -45)];

    private static Column[] Cross(int x) => [Column.Upright(new(x + 24, 0), 16, 90), Level(x, 50, 64)];

    private static Column[] Ring(int x)
    {
        var outer = Circle(x + 40, 40, 40);
        return [new(outer, Circle(x + 40, 40, 26))];
    }

    private static Way Circle(int x, int y, int radius) => new([.. Enumerable.Range(0, 25).Select(k => new TapePoint(
        x + (int)Math.Round(radius * Math.Cos(k * Math.PI / 12)), y + (int)Math.Round(radius * Math.Sin(k * Math.PI / 12))))]);

    private static Column Level(int x, int y, int width) => new(new([new(x, y), new(x + width, y)]), new([new(x, y + 16), new(x + width, y + 16)]));

    private static Column Slanted(int x, int y, int across, int up) =>
        new(new([new(x, y), new(x + across, y + up)]), new([new(x, y + 16), new(x + across, y + up + 16)]));

    private static Draft Dashes(int rise)
    {
        var draft = new Draft();
        for (var dash = 0; dash < 14; dash++)
        {
            var (x, next) = (-350 + (50 * dash), -350 + (50 * dash) + 30);
            var (from, to) = (new TapePoint(x, Height(x)), new TapePoint(next, Height(next)));
            draft.Trim(from).Stitch(from).Run(15, from, to);
        }

        return draft;

        int Height(int x) => rise - (rise * x * x / (350 * 350));
    }

    private static Draft Zigzag() =>
        new Draft().Move(new(-300, 0)).Run(20, [.. Enumerable.Range(0, 25).Select(k => new TapePoint(-300 + (25 * k), k % 2 == 0 ? 0 : 60))]);

    private static Draft Wave() =>
        new Draft().Move(new(-300, 0)).Run(20, [.. Enumerable.Range(0, 121).Select(k => new TapePoint(-300 + (5 * k), (int)Math.Round(30 * Math.Sin(k * Math.PI / 10))))]);

    private static Draft Leaves()
    {
        var draft = new Draft();
        Columns(draft, Level(-300, 0, 600));
        for (var leaf = 0; leaf < 9; leaf++)
        {
            var (x, lean) = (-280 + (65 * leaf), leaf % 2 == 0 ? 40 : -40);
            Columns(draft, new Column(
                new([new(x, 14), new(x + (lean / 2) - 14, 60), new(x + lean, 110)]),
                new([new(x + 8, 14), new(x + (lean / 2) + 14, 60), new(x + lean + 4, 110)])));
        }

        return draft;
    }

    private static Draft Crown()
    {
        var draft = new Draft();
        Columns(draft, Level(-200, 0, 400));
        foreach (var (x, height) in new[] { (-190, 90), (-100, 120), (-10, 140), (80, 120), (170, 90) })
            Columns(draft, Column.Upright(new(x, 10), 22, height), Level(x - 14, height + 4, 50));
        return draft;
    }

    private static void Columns(Draft draft, params Column[] columns)
    {
        foreach (var column in columns)
        {
            var foot = column.Left.At(0);
            if (draft.Moves.Count == 0)
                draft.Move(foot);
            else
                draft.Trim(foot);
            draft.Stitch(foot).Tie(column.Right.At(0.5)).Sew(column).Tie(column.Right.At(0.5));
        }
    }
}
