namespace CapPrep.TestKit.Tapes.Letters;

/// <summary>The strokes of one letter, in the order in which a hand would draw them.</summary>
/// <param name="Width">From the middle of its leftmost stroke to that of its rightmost, hundredths of the x-height.</param>
/// <param name="Strokes">At least one.</param>
internal sealed record LetterShape(double Width, params IReadOnlyList<LetterStroke> Strokes);
