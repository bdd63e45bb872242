using CapPrep.Engine.Pieces;

namespace CapPrep.Engine.Checks.OnStitches.Columns;

/// <summary>Satin and fill that is seen in the finished design and was read without doubt.</summary>
internal static class SeenAreas
{
    // House: what lies under cover by half or more is not judged by how it looks.
    private const double HiddenFrom = 0.5;

    /// <summary>House: what lies on cover by so much lies on it whole.</summary>
    internal const double OnCoverFrom = 0.8;

    internal static IEnumerable<Piece> Of(Subject subject) => WithDoubtful(subject).Where(piece => piece.Sure);

    /// <summary>Also what hangs on a narrow choice.</summary>
    internal static IEnumerable<Piece> WithDoubtful(Subject subject) => subject.Reading.Pieces.Where(piece =>
        piece.IsClosed && subject.Ground[piece].UnderCover < HiddenFrom);

    /// <summary>Columns of flat work; those over foam have rules of their own.</summary>
    internal static IEnumerable<Piece> FlatColumns(Subject subject) =>
        Of(subject).Where(piece => piece.Class == StitchClass.Satin && !subject.Foam.Contains(piece));

    internal static bool LiesOnCover(Subject subject, Piece piece) => subject.Ground[piece].OnCover >= OnCoverFrom;
}
