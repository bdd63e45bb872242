using CapPrep.Engine.Measures;

namespace CapPrep.Engine.Pieces;

/// <summary>Stitches that go on in about one direction, from one turn to the next.</summary>
/// <param name="First">Penetration it starts from; the one before ends there too.</param>
/// <param name="Last">Penetration it ends with.</param>
/// <param name="From">Where it starts, tape units.</param>
/// <param name="To">Where it ends.</param>
/// <param name="Stitches">Stitches of more than no length.</param>
/// <param name="Arc">Length along the stitches, sixteenths of a tape unit.</param>
/// <param name="Shortest">Length of the shortest of them, steps left out.</param>
internal readonly record struct Stroke(int First, int Last, TapePoint From, TapePoint To, int Stitches, long Arc, long Shortest)
{
    // From 0.4 mm a stroke can be a row of something.
    private const long ShortestRow = 4 * Fine.PerTenth;

    // A row and a stroke so many times as long are no neighbors: a tie and the line that begins with it.
    private const int LargestRatio = 6;

    public TapePoint Chord => To - From;

    /// <summary>Twice its middle.</summary>
    public TapePoint DoubleMiddle => From + To;

    public long Length => Fine.Length(Chord);

    /// <summary>Straight and long enough to be a row: the chord is over 0.9 of the way.</summary>
    public bool IsRow => Length > ShortestRow && 10 * Length > 9 * Arc;

    /// <summary>No stitch is shorter than half of their mean: the row was split, not laid in stitches of one length.</summary>
    public bool IsEven => Shortest >= Length / (2 * Stitches);

    /// <summary>The other goes back against this one: cosine below -0.3.</summary>
    public bool IsAgainst(in Stroke other)
    {
        var dot = Fine.Dot(Chord, other.Chord);
        return dot < 0 && dot * dot * 100 > 9 * Fine.Square(Chord) * Fine.Square(other.Chord);
    }

    /// <summary>
    /// The other is sewn back beside this one, near enough to be its neighbor: middles at most 1.2 mm apart across the
    /// rows, more for rows longer than that, never over 4 mm.
    /// </summary>
    public bool IsBeside(in Stroke next)
    {
        if (!IsRow || !next.IsRow || !IsAgainst(next) || Math.Max(Length, next.Length) > LargestRatio * Math.Min(Length, next.Length))
            return false;
        var along = Chord - next.Chord;
        var apart = next.DoubleMiddle - DoubleMiddle;
        var across = Fine.Cross(apart, along);
        var most = Math.Min(40, Math.Max(12, 9 * Math.Min(Length, next.Length) / Fine.PerTenth / 10));
        return across * across <= 4 * most * most * Fine.Square(along);
    }
}
