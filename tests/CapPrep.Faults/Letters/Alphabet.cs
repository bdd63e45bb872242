using System.Globalization;
using CapPrep.FaultCorpus.Geometry;

namespace CapPrep.FaultCorpus.Letters;

/// <summary>
/// Letters as the middle lines of their strokes; capitals are 1 high. A stroke is a list of points, of arcs
/// <c>@x,y,rx,ry,from,to</c>, or begins with <c>~</c> for a smooth line; strokes are parted by a bar.
/// </summary>
internal static class Alphabet
{
    /// <summary>Height of lower case without ascenders, as a share of the capitals.</summary>
    internal const double XHeight = 0.7;

    private static readonly Dictionary<char, string> Drawn = new()
    {
        ['A'] = "0,0 .4,1 | .4,1 .8,0 | .13,.31 .67,.31",
        ['B'] = "0,0 0,1 | 0,1 .3,1 @.3,.75,.26,.25,90,-90 0,.5 | 0,.5 .33,.5 @.33,.25,.28,.25,90,-90 0,0",
        ['C'] = "@.4,.5,.4,.5,48,312",
        ['D'] = "0,0 0,1 | 0,1 .3,1 @.3,.5,.42,.5,90,-90 0,0",
        ['E'] = "0,0 0,1 | 0,1 .56,1 | 0,.5 .48,.5 | 0,0 .56,0",
        ['F'] = "0,0 0,1 | 0,1 .56,1 | 0,.5 .48,.5",
        ['G'] = "@.4,.5,.4,.5,48,350 | .42,.42 .794,.42",
        ['H'] = "0,0 0,1 | .7,0 .7,1 | 0,.5 .7,.5",
        ['I'] = "0,0 0,1",
        ['J'] = ".5,1 .5,.27 @.25,.27,.25,.27,0,-160",
        ['K'] = "0,0 0,1 | .62,1 0,.42 | .2,.607 .66,0",
        ['L'] = "0,0 0,1 | 0,0 .54,0",
        ['M'] = "0,0 0,1 | 0,1 .43,.2 | .43,.2 .86,1 | .86,1 .86,0",
        ['N'] = "0,0 0,1 | 0,1 .7,0 | .7,0 .7,1",
        ['O'] = "@.42,.5,.42,.5,-90,270",
        ['P'] = "0,0 0,1 | 0,1 .32,1 @.32,.74,.28,.26,90,-90 0,.48",
        ['R'] = "0,0 0,1 | 0,1 .32,1 @.32,.74,.28,.26,90,-90 0,.48 | .3,.48 .62,0",
        ['S'] = "@.33,.745,.28,.255,30,270 @.33,.25,.31,.25,90,-150",
        ['T'] = "0,1 .7,1 | .35,1 .35,0",
        ['U'] = "0,1 0,.33 @.34,.33,.34,.33,180,360 .68,1",
        ['V'] = "0,1 .38,0 | .38,0 .76,1",
        ['W'] = "0,1 .25,0 | .25,0 .5,.8 | .5,.8 .75,0 | .75,0 1,1",
        ['X'] = "0,0 .7,1 | 0,1 .7,0",
        ['Y'] = "0,1 .36,.45 | .72,1 .36,.45 | .36,.45 .36,0",
        ['Z'] = "0,1 .64,1 | .64,1 0,0 | 0,0 .66,0",
        ['1'] = ".14,.8 .32,1 | .32,1 .32,0",
        ['7'] = "0,1 .6,1 | .6,1 .22,0",
        ['8'] = "@.31,.75,.27,.25,-90,270 | @.31,.25,.31,.25,90,450",
        ['9'] = "@.3,.7,.3,.3,-90,270 | .6,.7 .34,0",
        ['0'] = "@.34,.5,.34,.5,-90,270",
        ['a'] = "@.28,.35,.28,.35,0,360 | .56,.7 .56,0",
        ['b'] = "0,0 0,1 | @.28,.35,.28,.35,180,540",
        ['c'] = "@.3,.35,.3,.35,48,312",
        ['d'] = "@.28,.35,.28,.35,0,360 | .56,1 .56,0",
        ['e'] = "@.3,.35,.3,.35,3,312 | 0,.36 .6,.36",
        ['g'] = "@.28,.35,.28,.35,0,360 | .56,.7 .56,-.1 @.29,-.1,.27,.2,0,-150",
        ['h'] = "0,0 0,1 | 0,.4 @.27,.42,.27,.28,180,0 .54,0",
        ['i'] = "0,0 0,.7 | 0,.93 0,1",
        ['k'] = "0,0 0,1 | .5,.7 0,.27 | .17,.416 .54,0",
        ['l'] = "0,0 0,1",
        ['m'] = "0,0 0,.7 | 0,.4 @.24,.42,.24,.28,180,0 .48,0 | .48,.4 @.72,.42,.24,.28,180,0 .96,0",
        ['n'] = "0,0 0,.7 | 0,.4 @.27,.42,.27,.28,180,0 .54,0",
        ['o'] = "@.3,.35,.3,.35,-90,270",
        ['p'] = "0,-.3 0,.7 | @.28,.35,.28,.35,180,540",
        ['r'] = "0,0 0,.7 | 0,.4 @.22,.44,.22,.26,180,70",
        ['s'] = "@.24,.525,.2,.175,30,270 @.24,.175,.22,.175,90,-150",
        ['t'] = ".2,.95 .2,0 | 0,.7 .42,.7",
        ['u'] = "0,.7 0,.26 @.27,.26,.27,.26,180,360 .54,.7",
        ['v'] = "0,.7 .28,0 | .28,0 .56,.7",
        ['w'] = "0,.7 .2,0 | .2,0 .4,.56 | .4,.56 .6,0 | .6,0 .8,.7",
        ['x'] = "0,0 .5,.7 | 0,.7 .5,0",
        ['y'] = "0,.7 .29,.06 | .56,.7 .15,-.3",
        ['z'] = "0,.7 .46,.7 | .46,.7 0,0 | 0,0 .48,0",
    };

    private static readonly Dictionary<char, IReadOnlyList<Curve>> Read = Drawn.ToDictionary(
        letter => letter.Key, letter => (IReadOnlyList<Curve>)[.. letter.Value.Split('|').Select(Stroke)]);

    internal static IReadOnlyList<Curve> Strokes(char letter) => Read[letter];

    internal static bool Has(char letter) => Read.ContainsKey(letter);

    /// <summary>From the leftmost to the rightmost middle line.</summary>
    internal static (double Left, double Right) Reach(char letter)
    {
        var points = Read[letter].SelectMany(stroke => stroke.Points).ToList();
        return (points.Min(p => p.X), points.Max(p => p.X));
    }

    private static Curve Stroke(string text)
    {
        var tokens = text.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        if (tokens[0] == "~")
            return Curve.Smooth([.. tokens.Skip(1).Select(Point)]);
        return new([.. tokens.SelectMany(token => token[0] == '@' ? Arc(token[1..]) : [Point(token)])]);
    }

    private static IReadOnlyList<Vec> Arc(string text)
    {
        var n = Numbers(text);
        return Curve.Arc(new(n[0], n[1]), n[2], n[3], n[4], n[5], 20).Points;
    }

    private static Vec Point(string text) => Numbers(text) is [var x, var y] ? new(x, y) : throw new FormatException(text);

    private static double[] Numbers(string text) =>
        [.. text.Split(',').Select(number => double.Parse(number, CultureInfo.InvariantCulture))];
}
