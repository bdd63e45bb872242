using CapPrep.Engine.Lettering.Curves;
using CapPrep.Engine.Lettering.Letters;
using CapPrep.Engine.Lettering.Limbs;
using CapPrep.Engine.Measures;

namespace CapPrep.Engine.Lettering.Search;

/// <summary>Says whether a candidate is a line of letters. Shares were found by looking at real designs (house).</summary>
/// <param name="set">All limbs, those of other lines too.</param>
internal sealed class Acceptance(LimbSet set)
{
    // Nobody sews letters below 2 mm.
    private const int LeastHeight = 2 * Fine.PerMillimeter;

    private const int FewestLetters = 3;

    // Lines look like letters more often than columns do.
    private const int FewestInLine = 4;
    private const int FewestLimbs = 4;

    // Nobody sets three letters on a steep line, but many other things lie on one.
    private const int FewestOnSteep = 5;

    // Few letters stand close together: bare cloth between them, percent of the height.
    private const int FewestWithGap = 6;
    private const int WideGap = 130;

    // Share of letters, percent.
    private const int StandShare = 60;
    private const int LevelShare = 60;
    private const int NeitherShare = 20;
    private const int DescendShare = 60;

    // Share of limbs, percent.
    private const int WidthShare = 60;
    private const int LeanShare = 60;
    private const int StemShareOnArc = 75;

    // Widths from 0.6 to 1.6 of the middle one, percent; a stroke is at most so wide, percent of the height.
    private const int Narrowest = 60;
    private const int Widest = 160;
    private const int WidestStroke = 36;

    // Limbs that show how letters lean have this share of their height, percent.
    private const int TallShare = 60;

    // Limbs of letters lean at most so far from the line's own lean: 20 degrees and a little.
    private const int OtherLean = 400;

    // So many letters in rank need not show by their stems how they lean: A, K, R, S, X and 2 have few.
    private const int FewestInRank = 4;
    private const int RankShare = 80;

    // Limbs of a letter, percent: leaves that lean any way are one each, or two where their tips meet.
    private const int LimbsInRank = 225;

    // Letters lean at most 25 degrees.
    private const int MostLean = 466;

    // The line is at least so many times as long as its letters are high, percent.
    private const int LeastLength = 220;

    // Accents and dots reach so high, percent of the height of capitals.
    private const int TallestLetter = 145;

    // Descenders and tails reach so far below the line, percent of the same.
    private const int Deepest = 60;

    // Share of letters that go on outside of the line's band, percent.
    private const int OutsideShare = 25;

    public bool Accepts(Candidate line)
    {
        Letter[] letters = [.. line.Letters.Where(letter => !letter.IsSign)];
        return HasSize(line, letters.Length)
            && Stand(line, letters)
            && HasEvenWidth(line)
            && (LeanAlike(line) || StandsInRank(line, letters))
            && (letters.Length >= FewestWithGap || !HasWideGap(letters, line.Levels))
            && !IsOver(Outside(line) + letters.Count(letter => IsTooTall(letter, line.Levels)), letters.Length, OutsideShare)
            && Variety.IsLettering(letters, line.Levels);
    }

    private bool HasSize(Candidate line, int letters) =>
        line.Levels.Low >= LeastHeight
        && letters >= (set.Make == LetterMake.Running ? FewestInLine : FewestLetters)
        && line.Limbs.Count() >= FewestLimbs
        && 100L * line.Length >= LeastLength * (long)line.Levels.Low
        && (!line.IsSteep || line.Stand >= FewestOnSteep);

    /// <summary>Most letters stand on the line and reach a height, and few do neither.</summary>
    private static bool Stand(Candidate line, Letter[] letters) =>
        IsShare(line.Stand, letters.Length, StandShare)
        && IsShare(letters.Count(letter => line.Levels.Has(letter.Top)), letters.Length, LevelShare)
        && !IsOver(letters.Count(letter => !letter.Stands && !(letter.Descends && line.Levels.Has(letter.Top))), letters.Length, NeitherShare)
        && !IsOver(letters.Count(letter => letter.Descends), letters.Length, DescendShare);

    private static bool AgreeOnLean(Standing[] limbs, int lean, int percent) =>
        IsShare(limbs.Count(limb => Math.Abs(limb.Lean!.Value - lean) <= OtherLean), limbs.Length, percent);

    private static bool HasWideGap(Letter[] letters, Levels levels) => letters.Zip(letters.Skip(1))
        .Any(pair => 100L * (pair.Second.Group.Reach.From - pair.First.Group.Reach.To) > WideGap * (long)levels.Low);

    private static bool LeanAlike(Candidate line)
    {
        Standing[] tall = [.. line.Limbs.Where(limb => limb.Lean is not null && 100L * limb.Reach.Height >= TallShare * (long)line.Levels.Low)];
        Standing[] straight = [.. tall.Where(limb => limb.Limb.IsStraight)];
        return Math.Abs(line.Lean) <= MostLean && AgreeOnLean(tall, line.Lean, LeanShare)
            && (line.Curve is StraightCurve || AgreeOnLean(straight, line.Lean, StemShareOnArc));
    }

    /// <summary>Letters stand on a straight line and reach its height, all but one in five, and nothing reaches beyond them.</summary>
    private bool StandsInRank(Candidate line, Letter[] letters) =>
        line.Curve is StraightCurve
        && !line.IsSteep
        && letters.Length >= FewestInRank
        && IsShare(line.Limbs.Count(), letters.Length, LimbsInRank)
        && IsShare(line.Stand, letters.Length, RankShare)
        && IsShare(letters.Count(letter => line.Levels.Has(letter.Top)), letters.Length, RankShare)
        && !letters.Any(letter => IsTooTall(letter, line.Levels))
        && Math.Abs(line.Lean) <= MostLean
        && Outside(line) == 0;

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
        foreach (var limb in set.Limbs.Where(limb => !inside.Contains(limb.Index)))
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
