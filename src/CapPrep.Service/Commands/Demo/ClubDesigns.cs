using CapPrep.Engine.Drafting;
using CapPrep.Engine.Measures;

namespace CapPrep.Service.Commands.Demo;

/// <summary>
/// Five designs for the caps of an invented rowing club, the Herons of Quayside: one that is right, and four that
/// are wrong in the ways that cost a shop most.
/// </summary>
internal static class ClubDesigns
{
    private const string Club = "HERONS";
    private const int Height = 90;
    private const int Stroke = 16;
    private const int Gap = 22;

    /// <summary>Bottom line first, from the seam outward; then the shield, fill before border.</summary>
    public static byte[] Right()
    {
        var draft = new Draft();
        Word(draft, Club, Height, Stroke, Gap, FromCenter(Club.Length));
        draft.ColorStop();
        ShieldFill(draft, 150);
        draft.ColorStop();
        ShieldBorder(draft, 150);
        return draft.ToBytes("HERONS");
    }

    /// <summary>The same shapes as a flat design is often made: shield first, and the bottom line last, left to right.</summary>
    public static byte[] BottomLineLast()
    {
        var draft = new Draft();
        ShieldFill(draft, 150);
        draft.ColorStop();
        ShieldBorder(draft, 150);
        draft.ColorStop();
        Word(draft, Club, Height, Stroke, Gap, Enumerable.Range(0, Club.Length));
        return draft.ToBytes("HERONS");
    }

    /// <summary>A shield far up the crown: 72 mm from top to bottom.</summary>
    public static byte[] TooTall()
    {
        var draft = new Draft();
        Word(draft, Club, Height, Stroke, Gap, FromCenter(Club.Length));
        draft.ColorStop();
        ShieldFill(draft, 420);
        draft.ColorStop();
        ShieldBorder(draft, 420);
        return draft.ToBytes("HERONS TALL");
    }

    /// <summary>Small text over the seam, a running outline round the fill, and one spot sewn over and over.</summary>
    public static byte[] Crowded()
    {
        const string Small = "EST 1987";
        var draft = new Draft();
        Word(draft, Small, 36, 7, 9, Enumerable.Range(0, Small.Length));
        draft.ColorStop();
        ShieldFill(draft, 80);
        draft.ColorStop();
        draft.Trim(Shield(80)[0]).Tie(new TapePoint(0, 200));
        draft.Run(25, [.. Shield(80), Shield(80)[0]]);
        draft.ColorStop();
        Hammered(draft, new TapePoint(0, 300));
        return draft.ToBytes("HERONS EST");
    }

    /// <summary>Half of a download: the header promises more than there is.</summary>
    public static byte[] Broken() => Right()[..300];

    private static void Word(Draft draft, string word, int height, int stroke, int gap, IEnumerable<int> order)
    {
        var feet = Feet(word, height, stroke, gap);
        var first = true;
        foreach (var i in order.Where(i => word[i] != ' '))
        {
            var entry = StrokeLetters.Entry(word[i], feet[i], height, stroke);
            if (first)
                draft.Move(entry);
            else
                draft.Trim(entry);
            first = false;
            draft.Stitch(entry).Tie(feet[i] + new TapePoint(stroke / 2, height / 2));
            StrokeLetters.Sew(draft, word[i], feet[i], height, stroke);
            draft.Tie(feet[i] + new TapePoint(stroke / 2, height / 2));
        }
    }

    /// <summary>Lower left corners of the letters, the word centered on x = 0.</summary>
    private static TapePoint[] Feet(string word, int height, int stroke, int gap)
    {
        var widths = word.Select(letter => letter == ' ' ? height / 2 : StrokeLetters.WidthOf(letter, height, stroke)).ToArray();
        var x = -(widths.Sum() + (gap * (word.Length - 1))) / 2;
        var feet = new TapePoint[word.Length];
        for (var i = 0; i < word.Length; i++)
        {
            feet[i] = new TapePoint(x, 0);
            x += widths[i] + gap;
        }

        return feet;
    }

    /// <summary>Right half outward, then left half outward.</summary>
    private static IEnumerable<int> FromCenter(int count) =>
        Enumerable.Range(count / 2, count - (count / 2)).Concat(Enumerable.Range(0, count / 2).Reverse());

    private static TapePoint[] Shield(int bottom) =>
    [
        new(0, bottom), new(130, bottom + 100), new(170, bottom + 220), new(170, bottom + 300),
        new(-170, bottom + 300), new(-170, bottom + 220), new(-130, bottom + 100),
    ];

    private static void ShieldFill(Draft draft, int bottom)
    {
        var fill = new Fill(Shield(bottom));
        // The fill's underlay begins at its upper left.
        var entry = new TapePoint(-162, bottom + 288);
        draft.Trim(entry).Stitch(entry).Tie(new TapePoint(0, bottom + 200));
        draft.Sew(fill);
        draft.Tie(new TapePoint(0, bottom + 250));
    }

    /// <summary>Satin 3 mm wide whose inner edge lies 1.5 mm on the fill; up the right side, then up the left.</summary>
    private static void ShieldBorder(Draft draft, int bottom)
    {
        var corners = Shield(bottom);
        var right = new[] { corners[0], corners[1], corners[2], corners[3], new TapePoint(0, bottom + 300) };
        Edge(draft, right);
        Edge(draft, [.. right.Select(point => new TapePoint(-point.X, point.Y))]);
    }

    private static void Edge(Draft draft, TapePoint[] line)
    {
        var middle = new TapePoint(0, (line[0].Y + line[^1].Y) / 2);
        var outer = line.Select(point => Way.Toward(point, middle, -15)).ToArray();
        var inner = line.Select(point => Way.Toward(point, middle, 15)).ToArray();
        draft.Trim(outer[0]).Stitch(outer[0]).Tie(middle);
        draft.Sew(new Column(new Way(outer), new Way(inner)));
        draft.Tie(middle);
    }

    /// <summary>A patch of 5 x 5 mm with more than 20 holes in each square millimeter.</summary>
    private static void Hammered(Draft draft, TapePoint middle)
    {
        draft.Trim(middle + new TapePoint(-25, -25));
        for (var layer = 0; layer < 9; layer++)
        {
            for (var row = 0; row <= 50; row += 5)
            {
                for (var column = 0; column <= 50; column += 8)
                    draft.Stitch(middle + new TapePoint((row / 5 % 2 == 0 ? column : 50 - column) - 25 + (layer % 3), row - 25));
            }
        }
    }
}
