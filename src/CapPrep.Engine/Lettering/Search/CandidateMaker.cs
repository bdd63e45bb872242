using CapPrep.Engine.Lettering.Curves;
using CapPrep.Engine.Lettering.Letters;
using CapPrep.Engine.Lettering.Limbs;
using CapPrep.Engine.Measures;

namespace CapPrep.Engine.Lettering.Search;

/// <summary>Reads the letters on a base line.</summary>
/// <param name="limbs">Limbs that belong to no line yet.</param>
internal sealed class CandidateMaker(IReadOnlyList<Limb> limbs)
{
    // How far letters reach below the line and above what stands on it, percent of the height: the tallest may not be known yet.
    private const int Below = 60;
    private const int Above = 90;

    // What ends this near to the line lies under it; what is so many heights wide is no letter.
    private const int Least = 7;
    private const int Widest = 3;

    // Dots and accents begin below this share of the height of what stands on the line, percent.
    private const int Accent = 130;

    // Beside what stands on the line, a letter and a gap may follow that do not: so many heights.
    private const int Beside = 12;

    // Bare cloth between letters, percent of their height.
    private const int LargestGap = 130;

    // Letters that lean less than 1 in 12 stand upright.
    private const int LeastLean = 80;

    // Letters lean when so many of their stems, percent, lean alike by so much.
    private const int AgreeShare = 60;
    private const int AlikeLean = 120;

    // Three of anything stand on some circle.
    private const int FewestOnArc = 4;

    // An arc bends by at least 1 mm.
    private const double LeastSagitta = Tenths.PerMillimeter;

    /// <summary>The better of a straight and a round line under the limbs of a seed; null when neither has three letters.</summary>
    public Candidate? Of(Seed seed)
    {
        var near = Tolerance.Base(seed.Height);
        var straight = Fitted(seed, feet => Fit.Straight(feet, near)) is { } line ? On(line, seed) : null;
        var round = Fitted(seed, feet => Fit.Round(feet, near)) is { } circle ? On(circle, seed) : null;
        return Better(straight, round is { Stand: >= FewestOnArc } arc && Sagitta(arc) >= LeastSagitta ? arc : null);
    }

    /// <summary>A line under the limbs of the seed's run, then under those that stand on that line.</summary>
    private Curve? Fitted(Seed seed, Func<IReadOnlyList<TapePoint>, Curve?> fit)
    {
        Curve? curve = seed.Curve;
        for (var again = 0; again < 3 && curve is not null; again++)
        {
            var on = curve;
            var run = RunFinder.Run(limbs, on, seed.Height, seed.Limb);
            curve = run.Count < 3 ? null : fit([.. run.Select(standing => on.At(standing.Limb.Center).Lowest(standing.Limb.Hull))]);
        }

        return curve;
    }

    private static Candidate? Better(Candidate? straight, Candidate? round) =>
        straight is null ? round
        : round is null ? straight
        : round.IsBetterThan(straight) ? round : straight;

    private static double Sagitta(Candidate arc)
    {
        var radius = ((RoundCurve)arc.Curve).Radius;
        var half = Math.Min(radius, arc.Length / 2.0 / Fine.PerTenth);
        return half * half / 2 / radius;
    }

    private Candidate? On(Curve curve, Seed seed)
    {
        var run = RunFinder.Run(limbs, curve, seed.Height, seed.Limb);
        if (run.Count < 3)
            return null;
        var levels = Levels.Of([.. run.Select(standing => standing.Reach.Top)]);
        var lean = LeanOf(run);
        var beside = Beside * levels.High;
        var (from, to) = (run[0].Reach.From - beside, run.Max(standing => standing.Reach.To) + beside);
        Standing[] members =
        [
            .. limbs.Select(limb => RunFinder.Stand(limb, curve, lean)).Where(standing =>
                standing.Reach.From >= from && standing.Reach.To <= to && IsInBand(standing.Reach, levels)),
        ];
        return Read(curve, lean, run, Grouping.Letters(members, levels.High), levels);
    }

    private static Candidate? Read(Curve curve, int lean, IReadOnlyList<Standing> run, IReadOnlyList<Group> groups, Levels rough)
    {
        Letter[] standing = [.. groups.Select(group => Letter.Of(group, rough)).Where(letter => letter.Stands)];
        if (standing.Length == 0)
            return null;
        var levels = Levels.Of([.. standing.Select(letter => letter.Top)]);
        var letters = Connected([.. groups.Select(group => Letter.Of(group, levels))], levels, run);
        return letters.Count < 3 ? null : new(curve, levels, lean, letters);
    }

    /// <summary>A part of a letter: not wholly under the line, not far over the letters, and not a line along all of them.</summary>
    private static bool IsInBand(in Reach reach, Levels levels) =>
        100L * reach.Bottom >= -Below * (long)levels.High && 100L * reach.Top <= (100 + Above) * (long)levels.High
        && reach.Top * Least > levels.Low && 100L * reach.Bottom < Accent * (long)levels.High && reach.Width <= Widest * levels.High;

    /// <summary>The median lean of what is tall and straight, or else of what is tall; 0 when they do not agree on it.</summary>
    private static int LeanOf(IReadOnlyList<Standing> run)
    {
        Standing[] straight = [.. run.Where(standing => standing.Limb.IsStraight)];
        int[] leans = [.. (straight.Length > 0 ? straight : run).Select(standing => standing.Lean).OfType<int>().Order()];
        var middle = leans.Length == 0 ? 0 : leans[leans.Length / 2];
        var agree = leans.Count(lean => Math.Abs(lean - middle) <= AlikeLean);
        return Math.Abs(middle) < LeastLean || 100 * agree < AgreeShare * leans.Length ? 0 : middle;
    }

    /// <summary>The letters around the run without a wide gap, from the first to the last that is a letter.</summary>
    private static IReadOnlyList<Letter> Connected(Letter[] letters, Levels levels, IReadOnlyList<Standing> run)
    {
        var most = (int)(LargestGap * (long)levels.High / 100);
        var middle = Array.FindIndex(letters, letter => letter.Group.Limbs.Any(limb => limb.Limb.Index == run[run.Count / 2].Limb.Index));
        if (middle < 0)
            return [];
        var (first, last) = (middle, middle);
        while (first > 0 && letters[first].Group.Reach.From - letters[first - 1].Group.Reach.To <= most)
            first--;
        while (last < letters.Length - 1 && letters[last + 1].Group.Reach.From - letters[last].Group.Reach.To <= most)
            last++;
        while (first < last && !IsLetter(letters[first], levels))
            first++;
        while (last > first && !IsLetter(letters[last], levels))
            last--;
        return letters[first..(last + 1)];
    }

    private static bool IsLetter(Letter letter, Levels levels) =>
        !letter.IsSign && (letter.Stands || (letter.Descends && levels.Has(letter.Top)));
}
