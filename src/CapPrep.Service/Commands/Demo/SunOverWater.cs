using CapPrep.Engine.Drafting;
using CapPrep.Engine.Measures;

namespace CapPrep.Service.Commands.Demo;

/// <summary>A badge made in a hurry: a round fill, an outline of one running line, and a dense spot in its middle.</summary>
internal static class SunOverWater
{
    private const int Radius = 130;
    private const int SpotRadius = 38;
    private const int SpotLayers = 9;

    private static readonly TapePoint Middle = new(0, 200);

    public static void Disk(Draft draft)
    {
        draft.BeginAt(Middle, Middle + new TapePoint(20, 0));
        draft.Run(25, Middle, Middle + new TapePoint(-40, Radius - 14)).Sew(new Fill(Circle(Middle, Radius))).Tie(Middle);
    }

    public static void Outline(Draft draft)
    {
        var circle = Circle(Middle, Radius);
        draft.BeginAt(circle[0], Middle).Run(25, [.. circle, circle[0]]).Tie(Middle);
    }

    /// <summary>Nine fills of short stitches, one over the other.</summary>
    public static void Spot(Draft draft)
    {
        draft.BeginAt(Middle, Middle + new TapePoint(0, 9));
        for (var layer = 0; layer < SpotLayers; layer++)
        {
            var circle = Circle(Middle + new TapePoint(0, layer % 3), SpotRadius);
            draft.Sew(new Fill(circle) { RowPitch = 3, StitchLength = 8 + (layer % 5), UnderlayPitch = 0 });
        }

        draft.Tie(Middle);
    }

    /// <summary>Corners of a shape of 24 sides.</summary>
    private static TapePoint[] Circle(TapePoint middle, int radius)
    {
        (int X, int Y)[] eighth = [(1000, 0), (966, 259), (866, 500), (707, 707), (500, 866), (259, 966)];
        var quarter = eighth.Select(unit => new TapePoint(unit.X * radius / 1000, unit.Y * radius / 1000)).ToArray();
        return
        [
            .. quarter.Select(point => middle + point),
            .. quarter.Select(point => middle + new TapePoint(-point.Y, point.X)),
            .. quarter.Select(point => middle - point),
            .. quarter.Select(point => middle + new TapePoint(point.Y, -point.X)),
        ];
    }
}
