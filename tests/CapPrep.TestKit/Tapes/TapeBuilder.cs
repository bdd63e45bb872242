using CapPrep.Engine.Drafting;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Tapes;

namespace CapPrep.TestKit.Tapes;

/// <summary>Small designs for tests; sizes and places in tape units (0.1 mm) from the tape's start point.</summary>
public static class TapeBuilder
{
    /// <summary>A fill of exactly this box, in side-by-side color blocks of about equal width.</summary>
    public static Draft Box(int width, int height, TapePoint lowerLeft = default, int blocks = 1)
    {
        var draft = new Draft();
        for (var block = 0; block < blocks; block++)
        {
            if (block > 0)
                draft.ColorStop();
            var left = lowerLeft.X + (width * block / blocks);
            var right = lowerLeft.X + (width * (block + 1) / blocks);
            draft.Move(new(left, lowerLeft.Y)).Sew(Fill.Of(new(left, lowerLeft.Y, right, lowerLeft.Y + height)));
        }

        return draft.Stitch(new(lowerLeft.X + width, lowerLeft.Y + height));
    }

    /// <summary>A box whose bottom center is the start point: how a design for caps is made.</summary>
    public static Draft Seated(int width, int height, int blocks = 1) =>
        Box(width, height, new(-(width / 2), 0), blocks);

    /// <summary>Upright columns from left to right, tied and trimmed apart; 4 mm wide, 6 mm from one to the next.</summary>
    public static Draft Letters(int count = 3, int height = 100, TapePoint lowerLeft = default)
    {
        var draft = new Draft();
        for (var letter = 0; letter < count; letter++)
        {
            var foot = lowerLeft + new TapePoint(60 * letter, 0);
            var inside = foot + new TapePoint(20, height / 2);
            if (letter == 0)
                draft.Move(foot);
            else
                draft.Trim(foot);
            draft.Stitch(foot).Tie(inside).Sew(Column.Upright(foot, 40, height)).Tie(inside);
        }

        return draft;
    }

    /// <summary>
    /// A crest of three colors, 60 mm wide and 45 mm high, sewn from the bottom up: three letters, a shield over
    /// them, and its outline.
    /// </summary>
    public static Draft Crest()
    {
        var shield = new TapePoint[] { new(0, 150), new(300, 300), new(300, 450), new(-300, 450), new(-300, 300) };
        return Letters(3, 100, new(-80, 0))
            .ColorStop()
            .Sew(new Fill(shield))
            .ColorStop()
            .Run(25, [.. shield, shield[0]])
            .Tie(new(0, 300));
    }

    /// <summary>A tape of nothing but given moves.</summary>
    public static byte[] Of(params IEnumerable<TapeMove> moves) => TapeWriter.Write(new("TEST", [.. moves]));
}
