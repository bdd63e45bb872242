using CapPrep.Engine.Drafting;
using CapPrep.Engine.Measures;

namespace CapPrep.Service.Commands.Demo;

/// <summary>
/// Capitals and digits of our own as center lines, each drawn as satin columns: enough for the demo's designs.
/// A letter stands on y = 0 and is 100 units high.
/// </summary>
internal static class StrokeLetters
{
    private const int UnitHeight = 100;
    private const int TravelStitch = 20;

    /// <summary>Width and strokes, as "x,y x,y ..." with a bar between strokes, each sewn from its first point;
    /// a part that begins with ~ is running travel to the next stroke, along a stroke that hides it.</summary>
    private static readonly Dictionary<char, (int Width, string Strokes)> Shapes = new()
    {
        ['E'] = (60, "0,0 0,100|~0,94 60,94|60,94 0,94|~0,50 50,50|50,50 0,50|~0,6 60,6|60,6 0,6"),
        ['H'] = (70, "0,0 0,100|~0,50|0,50 70,50|~70,0|70,0 70,100"),
        ['N'] = (74, "0,0 0,100|4,96 70,4|74,0 74,100"),
        ['O'] = (80, "40,6 64,14 76,50 64,86 40,94 16,86 4,50 16,14 40,6"),
        ['R'] = (70, "0,0 0,100|0,94 40,94 55,89 62,78 62,66 55,55 40,50 0,50|~34,50|34,50 68,0"),
        ['S'] = (64, "60,78 48,92 22,94 6,80 8,62 30,52 50,44 60,28 50,10 26,4 2,18"),
        ['T'] = (72, "36,0 36,100|~0,94|0,94 72,94"),
        ['1'] = (24, "0,76 18,100|18,100 18,0"),
        ['7'] = (58, "0,94 58,94|58,94 18,0"),
        ['8'] = (64, "32,52 54,64 54,84 32,94 10,84 10,64 32,52|32,52 58,40 58,16 32,6 6,16 6,40 32,52"),
        ['9'] = (62, "56,64 40,48 18,50 6,66 12,86 32,94 52,86 56,64|56,64 44,20 26,0"),
    };

    /// <summary>Width of a letter with its stroke, tape units.</summary>
    public static int WidthOf(char letter, int height, int stroke) => (Shapes[letter].Width * height / UnitHeight) + stroke;

    /// <summary>Sews one letter, tied in and off; its box begins at the foot and is as high as asked, stroke included.</summary>
    /// <param name="draft">Where it is sewn.</param>
    /// <param name="letter">One of the letters there are.</param>
    /// <param name="foot">Lower left corner of its box, tape units.</param>
    /// <param name="height">Height of the box, tape units.</param>
    /// <param name="stroke">Width of the columns, tape units.</param>
    public static void Sew(Draft draft, char letter, TapePoint foot, int height, int stroke)
    {
        var parts = Shapes[letter].Strokes.Split('|');
        var first = Around(Line(parts[0], foot, height, stroke), stroke);
        draft.BeginAt(first.Left.At(0), first.Right.At(0.1));
        foreach (var part in parts)
        {
            var line = Line(part.TrimStart('~'), foot, height, stroke);
            if (part[0] == '~')
                draft.Run(TravelStitch, line);
            else
                draft.Sew(Around(line, stroke));
        }

        var last = Line(parts[^1], foot, height, stroke);
        draft.Tie(last[^2]);
    }

    private static TapePoint[] Line(string text, TapePoint foot, int height, int stroke)
    {
        var inner = height - stroke;
        var corner = foot + new TapePoint(stroke / 2, stroke / 2);
        return
        [
            .. text.Split(' ').Select(pair => pair.Split(',')).Select(pair =>
                corner + new TapePoint(Scaled(pair[0], height), Scaled(pair[1], inner))),
        ];
    }

    private static int Scaled(string number, int length) =>
        int.Parse(number, System.Globalization.CultureInfo.InvariantCulture) * length / UnitHeight;

    private static Column Around(TapePoint[] line, int stroke) =>
        SatinLine.Along(line, [.. line.Select(_ => stroke)]);
}
