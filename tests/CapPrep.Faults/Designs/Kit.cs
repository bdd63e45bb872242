using CapPrep.FaultCorpus.Geometry;
using CapPrep.FaultCorpus.Letters;
using CapPrep.FaultCorpus.Sewing;

namespace CapPrep.FaultCorpus.Designs;

/// <summary>What many designs are put together from.</summary>
internal static class Kit
{
    /// <summary>Where designs stand over the brim seam, mm: the nominal 12.7 of row F22 and a little room for round letters.</summary>
    internal const double Foot = 13.4;

    /// <summary>Letters of a height, well inside every limit.</summary>
    internal static Face FaceOf(Chance chance, double height) => new()
    {
        Height = height,
        Stroke = Math.Clamp(height * chance.Between(0.14, 0.18), Limits.ColumnWarn * 1.22, 2.6),
        Gap = Math.Clamp(height * 0.12, 0.9, 1.6),
        Pitch = chance.Between(0.37, 0.46),
        Under = height > 9 ? chance.Of(Under.Center, Under.Zigzag) : Under.Center,
    };

    /// <summary>A straight line that stands clean over the seam.</summary>
    internal static Word Line(Chance chance, string name, double y, Face face, IReadOnlyList<string> texts, double widest = 116)
    {
        for (var turn = 0; turn < 200; turn++)
        {
            var text = chance.Of(texts);
            var isPair = text.Contains(' ') || text.Length % 2 == 0;
            var word = new Word(name, text, face, new(new(0, y)))
            {
                GapOnFoot = isPair,
                MiddleGap = isPair ? MiddleGap(face) : 0,
                Order = chance.Of(LineOrder.Outward, LineOrder.Outward, LineOrder.OutwardLeftFirst),
            };
            if (word.Length <= widest && SeamCare.IsClean(word.Parts()) && HasOpenCounters(word))
                return word;
        }

        throw new InvalidOperationException($"No text of {face.Height} mm stands clean over the seam.");
    }

    /// <summary>Letters on both sides keep off the seam.</summary>
    internal static double MiddleGap(Face face) => face.Height < Limits.LetterNote * 1.1
        ? 2 * Limits.SeamTextNear * 1.45
        : 2 * Limits.SeamColumnNear * 1.3;

    internal static bool HasOpenCounters(Word word) => word.Face.As != SewnAs.Satin || word.Text
        .Distinct()
        .Where(sign => sign != ' ')
        .All(sign => Counters.Least(sign, word.Face) is not { } least || least >= Limits.Counter * 1.23);

    /// <summary>A filled shape and the satin border over its edge.</summary>
    internal static (FillArea Fill, SatinColumn Border) Bordered(
        string name, Curve outline, double width, double overlap, double degrees = 0)
    {
        var fill = new FillArea(Area.Of(outline)) { Name = $"{name} fill", Degrees = degrees };
        var path = outline.Beside(-((width / 2) - overlap));
        var border = new SatinColumn(new([.. path.Points, path.At(0.6)]), width) { Name = $"{name} border", Under = Under.Both };
        return (fill, border);
    }

    /// <summary>Threads that differ well, so many.</summary>
    internal static IReadOnlyList<Yarn> Yarns(Chance chance, int count) => chance.Some(count, Yarn.All);

    /// <summary>
    /// A fill angle that lies across the seam (fact rows C01, C02, C05), level enough for the shape that the rows advance
    /// upward and not from one side to the other.
    /// </summary>
    internal static double Across(Chance chance, Rect box)
    {
        var most = Math.Min(22, Math.Atan(0.25 * box.Height / box.Width) * 180 / Math.PI);
        return chance.Between(-most, most);
    }

    internal static FillArea Vary(this FillArea fill, Chance chance) => fill with
    {
        Degrees = Across(chance, fill.Shape.Box),
        Distance = chance.Between(0.37, 0.46),
        Stitch = chance.Between(3.2, 4.6),
        Under = chance.Of(Under.Across, Under.Mesh),
        ZigzagRows = chance.Is(0.2),
    };
}
