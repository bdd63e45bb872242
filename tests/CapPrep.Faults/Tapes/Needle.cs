using CapPrep.FaultCorpus.Sewing;

namespace CapPrep.FaultCorpus.Tapes;

/// <summary>One needle point of a tape, tape units of 0.1 mm as stored.</summary>
/// <param name="Part">Which part of the design it belongs to, from 0.</param>
/// <param name="Glyph">Letter of its text line, from 0; -1: none.</param>
/// <param name="Block">Color block, from 1.</param>
public sealed record Needle(int X, int Y, Joint Joint, SewnAs As, Purpose Purpose, int Part, int Glyph, int Block)
{
    /// <summary>Jumps it is reached by; 0 for a stitch.</summary>
    public int Jumps { get; init; }
}
