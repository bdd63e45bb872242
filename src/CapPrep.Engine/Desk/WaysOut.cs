namespace CapPrep.Engine.Desk;

/// <summary>What an order desk can do about a design that is too large for its cap. Nothing of it is done by itself.</summary>
/// <param name="OtherStyles">Cap styles for the same frame that take the design as it is, by id; may be empty.</param>
/// <param name="Scaled">The same cap with a smaller tape; null where that would be too small or too dense.</param>
/// <param name="Redigitized">The same cap with a design made anew; null when no size fits.</param>
public sealed record WaysOut(IReadOnlyList<OtherStyle> OtherStyles, ScaledTape? Scaled, NewSize? Redigitized);

/// <summary>A cap style that takes a design as it is.</summary>
public sealed record OtherStyle(string Id, string Name);

/// <summary>
/// The tape made smaller. It keeps its stitches, so the rows move together; the first cap is sewn alone.
/// </summary>
/// <param name="Scale">0.90 to 0.99.</param>
public sealed record ScaledTape(double Scale, double WidthMm, double HeightMm, double SmallestLetterMm, string Says);

/// <summary>The largest size for new digitizing, downward to whole mm.</summary>
public sealed record NewSize(double WidthMm, double HeightMm, string Says);
