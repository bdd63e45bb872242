using System.Globalization;
using System.Text;
using CapPrep.Drawing.Sheets;

namespace CapPrep.Drawing.Output;

/// <summary>Millimeters with at most two decimals, and path data made of them.</summary>
internal static class SvgNumber
{
    public static string Mm(int hundredths) => Append(new StringBuilder(), hundredths).ToString();

    public static StringBuilder Append(StringBuilder text, int hundredths)
    {
        if (hundredths < 0)
            text.Append('-');
        var (whole, part) = (Math.Abs(hundredths) / 100, Math.Abs(hundredths) % 100);
        if (whole > 0 || part == 0)
            text.Append(CultureInfo.InvariantCulture, $"{whole}");
        if (part > 0)
            text.Append('.').Append((char)('0' + (part / 10)));
        if (part % 10 > 0)
            text.Append((char)('0' + (part % 10)));
        return text;
    }

    /// <summary>Straight lines as relative steps, which keeps a tape of many stitches small.</summary>
    public static string Chains(IReadOnlyList<IReadOnlyList<SheetPoint>> chains, bool closed)
    {
        var data = new StringBuilder();
        foreach (var chain in chains.Where(chain => chain.Count > 0))
        {
            Pair(data.Append('M'), chain[0].X, chain[0].Y);
            data.Append('l');
            if (chain.Count == 1)
                data.Append("0 0");
            for (var i = 1; i < chain.Count; i++)
                Pair(i > 1 ? Separate(data, chain[i].X - chain[i - 1].X) : data, chain[i].X - chain[i - 1].X, chain[i].Y - chain[i - 1].Y);
            if (closed)
                data.Append('z');
        }

        return data.ToString();
    }

    public static string Steps(IReadOnlyList<PathStep> steps)
    {
        var data = new StringBuilder();
        foreach (var step in steps)
            Step(data, step);
        return data.ToString();
    }

    private static void Step(StringBuilder data, PathStep step)
    {
        if (step.Verb == PathVerb.Close)
        {
            data.Append('Z');
            return;
        }

        data.Append(step.Verb switch { PathVerb.Move => 'M', PathVerb.Line => 'L', _ => 'C' });
        Pair(data, step.First.X, step.First.Y);
        if (step.Verb == PathVerb.Curve)
        {
            Pair(Separate(data, step.Second.X), step.Second.X, step.Second.Y);
            Pair(Separate(data, step.Third.X), step.Third.X, step.Third.Y);
        }
    }

    private static void Pair(StringBuilder data, int x, int y) => Append(Separate(Append(data, x), y), y);

    /// <summary>A minus sign separates by itself.</summary>
    private static StringBuilder Separate(StringBuilder data, int next) => next < 0 ? data : data.Append(' ');
}
