using CapPrep.Engine.Pieces;
using CapPrep.Engine.Tapes;
using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Checks.OnStitches.Load;

/// <summary>
/// Designs that are a lot of stitches for a cap: soft crowns carry less (house). It says what a load takes, so that the
/// order desk can price it.
/// </summary>
internal static class HeavyDesign
{
    internal static readonly Check Check = Check.Telling("stitch.heavy", Needs.SeatedDesign, Find);

    private static IEnumerable<Occurrence> Find(Subject subject, RuleInForce rule)
    {
        var isSoft = subject.Setup.Style!.Structure == CrownStructure.Unstructured;
        var (level, stitches) = (isSoft ? Severity.Warn : Severity.Note, subject.Stitches.Count);
        if (rule.Limits.At(level) is { } most && stitches > most)
            yield return Heavy(subject, level, $"{Figure.Plain(stitches, 0)} stitches are a lot for this cap; over {Figure.Plain(most, 0)} it gets stiff. {Minutes(subject)}") with { LimitHere = most };
        else if (isSoft && FillShare(subject) is var share && share > rule.Parameter("softFillShareAtMost"))
            yield return Heavy(subject, level, $"Fill covers {Figure.Plain(100 * share, 0)} % of what can be sewn on this soft crown. {Minutes(subject)}");
    }

    private static Occurrence Heavy(Subject subject, Severity level, string text) =>
        new(subject.WholeDesign()) { Measured = subject.Stitches.Count, Level = level, Text = text };

    /// <summary>Of the room that style and location leave, the share under fill.</summary>
    private static double FillShare(Subject subject)
    {
        var zone = subject.Seated.Zone;
        var fills = Cover.Of(subject.Reading.Pieces.Where(piece => piece.Class == StitchClass.Fill).Select(piece => piece.Blanket));
        return fills.SquareMillimeters / (zone.Height.HoldAboveMm * zone.Width.HoldAboveMm);
    }

    private static string Minutes(Subject subject)
    {
        var (machine, stitches) = (subject.Setup.Machine, subject.Stitches);
        var speed = Math.Min(machine.Speed.CapSpm, subject.Setup.Style!.Sewing.SpeedSpm);
        var (trims, stops) = (Count(stitches, Relation.Cut), Count(stitches, Relation.Stop));
        var seconds = (60.0 * stitches.Count / speed) + (trims * machine.Stops.TrimSeconds) + (stops * machine.Stops.ColorChangeSeconds);
        return $"One load sews about {Figure.Plain(seconds / 60, 0)} min.";
    }

    private static int Count(StitchSequence stitches, Relation relation)
    {
        var count = 0;
        foreach (var one in stitches.Relations)
            count += one == relation ? 1 : 0;
        return count;
    }
}
