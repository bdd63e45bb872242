using CapPrep.Engine.Measures;

namespace CapPrep.TestKit.Tapes.Letters;

/// <summary>A letter as it was sewn.</summary>
/// <param name="Letter">Which one.</param>
/// <param name="Place">Place in the line from the left, from 0, spaces not counted.</param>
/// <param name="From">Where it begins along the base line, from the line's middle, tape units.</param>
/// <param name="To">Where it ends.</param>
/// <param name="Box">Box of its needle points on the tape.</param>
/// <param name="First">Its first penetration, counted from 0 over the whole draft.</param>
/// <param name="Last">Its last one.</param>
public sealed record DraftedLetter(char Letter, int Place, double From, double To, Box Box, int First, int Last);
