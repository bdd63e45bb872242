using static CapPrep.TestKit.Tapes.Letters.LetterStroke;

namespace CapPrep.TestKit.Tapes.Letters;

/// <summary>Letters of our own, plain strokes of one width.</summary>
internal static class LetterShapes
{
    private const double Cap = 140;

    private static readonly IReadOnlyDictionary<char, LetterShape> All = new Dictionary<char, LetterShape>
    {
        ['a'] = new(72, Ring(34, 50, 34, 50), Stem(72, 0, 100)),
        ['b'] = new(72, Stem(0, 0, Cap), Ring(38, 50, 34, 50)),
        ['c'] = new(60, Arc(36, 50, 36, 50, 50, 310)),
        ['d'] = new(72, Ring(34, 50, 34, 50), Stem(72, 0, Cap)),
        ['e'] = new(70, Bar(52, 0, 70), Arc(35, 50, 35, 50, 3, 310)),
        ['g'] = new(72, Ring(34, 50, 34, 50), Arc(38, -6, 34, 34, 0, -150).After(72, 100)),
        ['h'] = new(70, Stem(0, 0, Cap), Arch(0, 70)),
        ['i'] = new(0, Stem(0, 0, 100), Dot(0)),
        ['l'] = new(0, Stem(0, 0, Cap)),
        ['m'] = new(120, Stem(0, 0, 100), Arch(0, 60), Arch(60, 120)),
        ['n'] = new(70, Stem(0, 0, 100), Arch(0, 70)),
        ['o'] = new(70, Ring(35, 50, 35, 50)),
        ['p'] = new(72, Stem(0, -40, 100), Ring(38, 50, 34, 50)),
        ['r'] = new(42, Stem(0, 0, 100), Arc(34, 60, 34, 40, 180, 60)),
        ['s'] = new(56, Arc(28, 75, 26, 25, 45, 270).Then(Arc(28, 25, 28, 25, 90, -135))),
        ['t'] = new(50, Stem(22, 0, 130), Bar(100, 0, 50)),
        ['u'] = new(70, Arc(35, 40, 35, 40, 180, 360).After(0, 100), Stem(70, 0, 100)),
        ['v'] = new(76, Line((0, 100), (38, 0)), Line((38, 0), (76, 100))),
        ['A'] = new(100, Line((0, 0), (50, Cap)), Line((50, Cap), (100, 0)), Bar(48, 20, 80)),
        ['B'] = new(76, Stem(0, 0, Cap), Bowl(76, 72, Cap), Bowl(76, 0, 72)),
        ['C'] = new(86, Arc(52, 70, 52, 70, 48, 312)),
        ['D'] = new(92, Stem(0, 0, Cap), Bowl(92, 0, Cap)),
        ['E'] = new(76, Stem(0, 0, Cap), Bar(Cap, 0, 76), Bar(72, 0, 66), Bar(0, 0, 76)),
        ['H'] = new(92, Stem(0, 0, Cap), Bar(72, 0, 92), Stem(92, 0, Cap)),
        ['I'] = new(0, Stem(0, 0, Cap)),
        ['L'] = new(72, Stem(0, 0, Cap), Bar(0, 0, 72)),
        ['M'] = new(120, Stem(0, 0, Cap), Line((0, Cap), (60, 20)), Line((60, 20), (120, Cap)), Stem(120, 0, Cap)),
        ['N'] = new(96, Stem(0, 0, Cap), Line((0, Cap), (96, 0)), Stem(96, 0, Cap)),
        ['O'] = new(104, Ring(52, 70, 52, 70)),
        ['P'] = new(78, Stem(0, 0, Cap), Bowl(78, 60, Cap)),
        ['R'] = new(82, Stem(0, 0, Cap), Bowl(78, 62, Cap), Line((36, 62), (82, 0))),
        ['S'] = new(80, Arc(40, 106, 36, 34, 40, 270).Then(Arc(40, 36, 40, 36, 90, -140))),
        ['T'] = new(88, Bar(Cap, 0, 88), Stem(44, 0, Cap)),
        ['U'] = new(90, Arc(45, 45, 45, 45, 180, 360).After(0, Cap).Then(90, Cap)),
        ['V'] = new(96, Line((0, Cap), (48, 0)), Line((48, 0), (96, Cap))),
        ['1'] = new(24, Line((0, 118), (24, Cap)), Stem(24, 0, Cap)),
        ['4'] = new(80, Line((60, Cap), (0, 40)), Bar(40, 0, 80), Stem(60, 0, Cap)),
        ['0'] = new(80, Ring(40, 70, 40, 70)),
    };

    /// <summary>The letter's strokes, or null for anything that is no letter here, such as a space.</summary>
    public static LetterShape? Find(char letter) => All.GetValueOrDefault(letter);

    /// <summary>Up from a stem, over to the right and down to the base line.</summary>
    private static LetterStroke Arch(double left, double right) =>
        Arc((left + right) / 2, 60, (right - left) / 2, 40, 180, 0).Then(right, 0);

    private static LetterStroke Bowl(double right, double bottom, double top) =>
        Arc(right / 2, (bottom + top) / 2, right / 2, (top - bottom) / 2, 90, -90).After(0, top).Then(0, bottom);

    private static LetterStroke Dot(double x) => Line((x - 1, 136), (x + 1, 136));
}
