using CapPrep.Engine.Lettering.Curves;
using CapPrep.Engine.Lettering.Limbs;
using CapPrep.Engine.Measures;

namespace CapPrep.Engine.Lettering.Search;

/// <summary>Says whether a candidate is a line of letters. Shares were found by looking at real designs (house).</summary>
/// <param name="all">All limbs of the set, those of other lines too.</param>
internal sealed class Acceptance(IReadOnlyList<Limb> all)
{
    // Nobody sews letters below 2 mm.
    private const int LeastHeight = 2 * Fine.PerMillimeter;

    private const int FewestLetters = 3;
    private const int FewestLimbs = 4;

    // Nobody sets three letters on a steep line, but many other things lie on one.
    private const int FewestOnSteep = 5;

    // Share of letters, percent.
    private const int StandShare = 60;
    private const int LevelShare = 60;
    private const int NeitherShare = 20;
    private const int DescendShare = 60;

    // Share of limbs, percent.
    private const int WidthShare = 60;
    private const int LeanShare = 60;

    // Widths from 0.6 to 1.6 of the middle one, percent; a stroke is at most so wide, percent of the height.
    private const int Narrowest = 60;
    private const int Widest = 160;
    private const int WidestStroke = 36;

    // Limbs that show how letters lean have this share of their height, percent.
    private const int TallShare = 60;

    // Limbs of letters lean at most so far from the line's own lean: 20 degrees and a little.
    private const int OtherLean = 400;

    // The line is at least so many times as long as its letters are high, percent.
    private const int LeastLength = 220;

    // Accents and dots reach so high, percent of the height of capitals.
    private const int TallestLetter = 145;

    // Descenders and tails reach so far below the line, percent of the same.
    private const int Deepest = 60;

    // Share of letters that go on outside of the line's band, percent.
    private const int OutsideShare = 25;

    /// <summary>Null when it is one, else why not.</summary>
    public string? Fault(Candidate line)
    {
        Letter[] letters = [.. line.Letters.Where(letter => !letter.IsSign)];
        Standing[] tall = [.. line.Limbs.Where(limb => limb.Lean is not null && 100L * limb.Reach.Height >= TallShare * (long)line.Levels.Low)];
        if (line.Levels.Low < LeastHeight || letters.Length < FewestLetters || line.Limbs.Count() < FewestLimbs)
            return "few";
        if (!IsShare(line.Stand, letters.Length, StandShare))
            return "base";
        if (!IsShare(letters.Count(letter => line.Levels.Has(letter.Top)), letters.Length, LevelShare))
            return "level";
        if (IsOver(letters.Count(letter => !letter.Stands && !(letter.Descends && line.Levels.Has(letter.Top))), letters.Length, NeitherShare))
            return "neither";
        if (IsOver(letters.Count(letter => letter.Descends), letters.Length, DescendShare))
            return "descends";
        if (!HasEvenWidth(line))
            return "width";
        if (!IsShare(tall.Count(limb => Math.Abs(limb.Lean!.Value - line.Lean) <= OtherLean), tall.Length, LeanShare))
            return "lean";
        if (line.IsSteep && line.Stand < FewestOnSteep)
            return "steep";
        if (100L * line.Length < LeastLength * (long)line.Levels.Low)
            return "short";
        if (IsOver(Outside(line) + letters.Count(letter => IsTooTall(letter, line.Levels)), letters.Length, OutsideShare))
            return "outside";
        return Variety.IsLettering(letters, line.Levels) ? null : "variety";
    }

    private static bool IsTooTall(Letter letter, Levels levels) => 100L * letter.Group.Reach.Top > TallestLetter * (long)levels.High;

    private static bool IsShare(int part, int whole, int percent) => 100L * part >= percent * (long)whole;

    private static bool IsOver(int part, int whole, int percent) => 100L * part > percent * (long)whole;

    private static bool HasEvenWidth(Candidate line)
    {
        int[] widths = [.. line.Limbs.Select(limb => limb.Limb.Width).Where(width => width > 0)];
        if (widths.Length == 0)
            return true;
        var middle = Median.Of(widths);
        return 100L * middle <= WidestStroke * (long)line.Levels.Low
            && IsShare(widths.Count(width => 100L * width >= Narrowest * (long)middle && 100L * width <= Widest * (long)middle), widths.Length, WidthShare);
    }

    /// <summary>Strokes that are sewn on outside of the band, and limbs that cross it.</summary>
    private int Outside(Candidate line)
    {
        var inside = line.Limbs.Select(limb => limb.Limb.Index).ToHashSet();
        var chains = line.Limbs.Select(limb => limb.Limb.Chain).ToHashSet();
        var (from, to) = (line.Letters[0].Group.Reach.From, line.Letters[^1].Group.Reach.To);
        var chainsOutside = new HashSet<int>();
        foreach (var limb in all.Where(limb => !inside.Contains(limb.Index)))
        {
            var reach = RunFinder.Stand(limb, line.Curve, line.Lean).Reach;
            var crosses = reach.To > from && reach.From < to && reach.Top > line.Levels.Low / 5 && reach.Bottom < line.Levels.Low * 4 / 5;
            var leaves = chains.Contains(limb.Chain) && (IsBeyond(reach, line.Levels) || reach.To < from - line.Levels.High || reach.From > to + line.Levels.High);
            if (crosses || leaves)
                chainsOutside.Add(limb.Chain);
        }

        return chainsOutside.Count;
    }

    private static bool IsBeyond(in Reach reach, Levels levels) =>
        100L * reach.Top > TallestLetter * (long)levels.High || 100L * reach.Bottom < -Deepest * (long)levels.High;
}
