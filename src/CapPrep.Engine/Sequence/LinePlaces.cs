using CapPrep.Engine.Checks;
using CapPrep.Engine.Lettering;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Pieces;
using CapPrep.Engine.Sequence.Cost;
using CapPrep.Engine.Sequence.Planning;

namespace CapPrep.Engine.Sequence;

/// <summary>Where the letters of a design stand, for the sew order.</summary>
internal static class LinePlaces
{
    // An element that reaches farther than 1 mm out of its line holds other things too.
    private const int Room = 1 * Tenths.PerMillimeter;

    // Letters below 10 mm are not cut apart; words that are 3 mm apart may be (house).
    private const double LargeLetterMm = 10;
    private const double WordGapMm = 3;

    // A line lies on a base where this share of its area does.
    private const double BaseShare = 0.8;

    /// <summary>Null when no text line was found: then a straight group at the lower edge stands for the tagline.</summary>
    internal static TextLinePlaces? Of(Subject subject)
    {
        if (subject.TextLines.Count == 0)
            return null;
        var own = OwnElements(subject);
        return new(
            [.. subject.TextLines.Select((line, index) => (IReadOnlyList<LinePlace>)[.. Places(line, own[index]), .. Swashes(subject, line, own)])],
            [.. subject.TextLines.Where(line => line.IsTagline).SelectMany(line => own[line.Index]).Order()])
        {
            TaglineGround = [.. subject.TextLines.Where(line => line.IsTagline).SelectMany(line => Around(subject, line, own[line.Index])).Order()],
            Held = [.. subject.TextLines.SelectMany(line => Held(subject.Reading, line, own[line.Index]))],
            Judged = [.. subject.TextLines.Where(line => IsJudged(subject, line)).Select(line => line.Index)],
        };
    }

    /// <summary>Of every line the elements that hold nothing else; none is in two.</summary>
    private static IReadOnlyList<IReadOnlySet<int>> OwnElements(Subject subject)
    {
        var placement = Placement.Of(subject.Seated);
        var taken = new HashSet<int>();
        return
        [
            .. subject.TextLines.Select(line => line.Elements
                .Where(element => LiesIn(placement.OnCap(subject.Reading.Elements[element].Box), line.Box) && taken.Add(element))
                .ToHashSet()),
        ];
    }

    /// <summary>What lies where the line does: a banner, its border, what is under both.</summary>
    private static IEnumerable<int> Around(Subject subject, TextLine line, IReadOnlySet<int> own)
    {
        var placement = Placement.Of(subject.Seated);
        var around = line.Box.Grown(Tenths.FromMillimeters(line.LetterHeightMm / 3).Value);
        return subject.Reading.Elements
            .Where(element => !own.Contains(element.Index) && placement.OnCap(element.Box).Meets(around))
            .Select(element => element.Index);
    }

    private static bool LiesIn(Box element, Box line) =>
        element.Left >= line.Left - Room && element.Right <= line.Right + Room
        && element.Bottom >= line.Bottom - Room && element.Top <= line.Top + Room;

    /// <summary>Handwriting has no order of letters: all of it stands in one place.</summary>
    private static IReadOnlyList<LinePlace> Places(TextLine line, IReadOnlySet<int> own)
    {
        var words = WordsOf(line);
        return
        [
            .. from glyph in line.Glyphs
               from element in glyph.Elements
               where own.Contains(element)
               select new LinePlace(element, line.IsConnected ? 0 : Middle(glyph), glyph.FromMm <= 0 && glyph.ToMm >= 0)
               {
                   First = glyph.Strokes[0].First,
                   Word = words[glyph],
               },
        ];
    }

    /// <summary>Strokes that belong to handwriting: of its thread, as wide as half of it, and a letter's height away at most.</summary>
    private static IEnumerable<LinePlace> Swashes(Subject subject, TextLine line, IReadOnlyList<IReadOnlySet<int>> own)
    {
        if (!line.IsConnected)
            return [];
        var placement = Placement.Of(subject.Seated);
        var near = line.Box.Grown(Tenths.FromMillimeters(line.LetterHeightMm).Value);
        return
            from element in subject.Reading.Elements
            where element.Thread == line.Thread && element.Kind != ElementKind.Fill && !own.Any(elements => elements.Contains(element.Index))
            let box = placement.OnCap(element.Box)
            where 2 * box.Width >= line.Box.Width && LiesIn(box, near)
            select new LinePlace(element.Index, 0, true);
    }

    private static int Middle(Glyph glyph) =>
        Tenths.FromMillimeters((glyph.FromMm + glyph.ToMm) / 2).Value;

    private static IEnumerable<(int Before, int After)> Held(DesignReading reading, TextLine line, IReadOnlySet<int> own)
    {
        if (line.LetterHeightMm >= LargeLetterMm)
            return [];
        var word = Words(line);
        return reading.Links
            .Where(link => own.Contains(link.Before) && own.Contains(link.After) && word[link.Before] == word[link.After])
            .Select(link => (link.Before, link.After));
    }

    /// <summary>The number of the word that an element begins in.</summary>
    private static Dictionary<int, int> Words(TextLine line)
    {
        var (words, ofGlyphs) = (new Dictionary<int, int>(), WordsOf(line));
        foreach (var glyph in line.Glyphs)
        {
            foreach (var element in glyph.Elements)
                words.TryAdd(element, ofGlyphs[glyph]);
        }

        return words;
    }

    private static Dictionary<Glyph, int> WordsOf(TextLine line)
    {
        var words = new Dictionary<Glyph, int>(ReferenceEqualityComparer.Instance);
        var word = 0;
        foreach (var glyph in line.Glyphs)
        {
            words[glyph] = word;
            word += glyph.GapMm >= WordGapMm ? 1 : 0;
        }

        return words;
    }

    /// <summary>A wide line across the seam whose letters stand apart on cloth.</summary>
    private static bool IsJudged(Subject subject, TextLine line)
    {
        var rule = subject.Setup.Rules.Find(OrderRuleIds.TextLine);
        return rule is not null
            && !line.IsConnected
            && line.Base.LengthMm >= rule.Row.Parameters["silentBelowMm"]
            && line.Glyphs[0].FromMm < 0 && line.Glyphs[^1].ToMm > 0
            && !LiesOnBase(subject, line);
    }

    private static bool LiesOnBase(Subject subject, TextLine line)
    {
        Piece[] pieces =
        [
            .. subject.Reading.Pieces.Where(piece => line.Glyphs.Any(glyph => glyph.Strokes.Any(stroke => stroke.First <= piece.Last && stroke.Last >= piece.First))),
        ];
        var area = pieces.Sum(piece => (double)piece.Cover.Area);
        return area > 0 && pieces.Sum(piece => subject.Ground[piece].OnCover * piece.Cover.Area) >= BaseShare * area;
    }
}
