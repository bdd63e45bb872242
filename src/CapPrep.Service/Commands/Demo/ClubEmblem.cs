using CapPrep.Engine.Drafting;
using CapPrep.Engine.Measures;

namespace CapPrep.Service.Commands.Demo;

/// <summary>
/// The emblem of the club: a heron that stands in the water before two crossed oars. Drawn at 100 percent about 34 mm
/// high and 40 mm wide, its foot at (0, foot), the waves below it.
/// </summary>
/// <param name="Foot">Height of the heron's feet, tape units.</param>
/// <param name="Percent">Size; 100 is the size it was drawn for.</param>
internal sealed record ClubEmblem(int Foot, int Percent)
{
    private const int ShaftWidth = 20;
    private const int WaveWidth = 15;
    private const int WaveStep = 8;

    // Height of the water at every step along a wave.
    private static readonly int[] Swell = [7, 5, 1, -4, -7, -7, -4, 1, 5];

    // A center line with the width of its satin at each point: x, y, width.
    private static readonly int[][] RightLeg = [[28, 0, 14], [16, 96, 14]];
    private static readonly int[][] LeftLeg = [[-12, 0, 14], [-6, 96, 14]];
    private static readonly int[][] Neck =
    [
        [44, 176, 44], [66, 198, 33], [72, 220, 27], [62, 242, 24], [48, 260, 23], [43, 280, 22], [51, 300, 25], [68, 313, 31],
        [88, 309, 22], [142, 287, 10],
    ];

    private static readonly int[][] Crest = [[58, 318, 15], [30, 314, 13], [6, 298, 11], [-8, 280, 10]];
    private static readonly int[][] Shaft = [[-106, 5, ShaftWidth], [152, 237, ShaftWidth]];
    private static readonly int[][] Blade = [[132, 219, 22], [152, 237, 46], [186, 268, 50], [202, 282, 40]];

    private static readonly int[][] Body =
    [
        [-30, 88], [34, 102], [60, 126], [72, 150], [70, 174], [52, 190], [22, 190], [-24, 164], [-66, 126], [-96, 100],
    ];

    /// <summary>Two rows of waves, each from the seam outward to both sides.</summary>
    public void Waves(Draft draft)
    {
        foreach (var (y, reach) in new[] { (-48, 200), (-20, 180) })
        {
            Sew(draft, Wave(y, reach, 1));
            Sew(draft, Wave(y, reach, -1));
        }
    }

    public void Shafts(Draft draft)
    {
        Sew(draft, Shaft);
        Sew(draft, Mirrored(Shaft));
    }

    /// <summary>From the feet to the crest.</summary>
    public void Heron(Draft draft)
    {
        Sew(draft, LeftLeg);
        Sew(draft, RightLeg);
        BodyFill(draft);
        Sew(draft, Neck);
        Sew(draft, Crest);
    }

    public void Blades(Draft draft)
    {
        Sew(draft, Blade);
        Sew(draft, Mirrored(Blade));
    }

    private void BodyFill(Draft draft)
    {
        var outline = Body.Select(At).ToArray();
        var fill = new Fill(outline);
        var middle = At([0, 140]);
        draft.BeginAt(middle, At([20, 150]));
        draft.Run(20, middle, Way.Toward(outline[6], middle, 8));
        draft.Sew(fill);
        draft.Tie(middle);
    }

    /// <summary>A satin column along a line, tied in at its beginning and off at its end.</summary>
    private void Sew(Draft draft, int[][] line)
    {
        var center = line.Select(At).ToArray();
        var widths = line.Select(point => Scaled(point[2])).ToArray();
        var column = SatinLine.Along(center, widths);
        draft.BeginAt(column.Left.At(0), column.Right.At(0.05));
        draft.Sew(column);
        draft.Tie(center[^2]);
    }

    /// <summary>Begins 0.8 mm beyond the seam, so that the two halves overlap there.</summary>
    private static int[][] Wave(int y, int reach, int side) =>
    [
        .. Enumerable.Range(-1, (reach / WaveStep) + 2).Select(k =>
            new[] { side * k * WaveStep, y + Swell[(k + Swell.Length) % Swell.Length], WaveWidth }),
    ];

    private static int[][] Mirrored(int[][] line) => [.. line.Select(point => new[] { -point[0], point[1], point[2] })];

    private TapePoint At(int[] point) => new(Scaled(point[0]), Foot + Scaled(point[1]));

    private int Scaled(int length) => length * Percent / 100;
}
