using CapPrep.Engine.Checks;
using CapPrep.Engine.Lettering;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Pieces;
using CapPrep.Engine.Seating;
using CapPrep.Engine.Sequence.Cost;
using CapPrep.Engine.Sequence.Groups;
using CapPrep.Engine.Sequence.Planning;

namespace CapPrep.Engine.Sequence;

/// <summary>Where the letters of a design stand, for the sew order.</summary>
internal static class LinePlaces
{
    // Letters below 10 mm are not cut apart; words that are 3 mm apart may be (house).
    private const double LargeLetterMm = 10;
    private const double WordGapMm = 3;

    // A line lies on a base where this share of its area does.
    private const double BaseShare = 0.8;

    /// <summary>Null when no letters were found: then a straight group at the lower edge stands for the tagline.</summary>
    internal static TextLinePlaces? Of(Subject subject)
    {
        var lines = SewnLines.Of(subject);
        if (lines.Count == 0)
            return null;
        var tagline = Tagline(subject, lines);
        return new(
            [.. lines.Select(line => (IReadOnlyList<LinePlace>)[.. Places(subject, line), .. Swashes(subject, line, lines)])],
            [.. tagline.SelectMany(line => line.Own).Order()])
        {
            TaglineGround = [.. tagline.SelectMany(line => Around(subject, line)).Distinct().Order()],
            TaglineIsOpen = tagline.Count == 0 && subject.TextLines.Count == 0,
            Held = [.. lines.SelectMany(line => Held(subject.Reading, line))],
            Judged = [.. Enumerable.Range(0, lines.Count).Where(index => IsJudged(subject, lines[index]))],
        };
    }

    /// <summary>The text line that is the tagline, else the lowest line when its row is one.</summary>
    private static IReadOnlyList<SewnLine> Tagline(Subject subject, IReadOnlyList<SewnLine> lines)
    {
        SewnLine[] known = [.. lines.Where(line => line.Line?.IsTagline == true)];
        return known.Length > 0 ? known : [.. lines.OrderBy(line => line.Box.Bottom).Take(1).Where(line => line.IsTaglineByRow(subject.Seated.Box))];
    }

    /// <summary>What lies where the line does: a banner, its border, what is under both.</summary>
    private static IEnumerable<int> Around(Subject subject, SewnLine line)
    {
        var placement = Placement.Of(subject.Seated);
        var around = line.Box.Grown(Tenths.FromMillimeters(line.LetterHeightMm / 3).Value);
        return subject.Reading.Elements
            .Where(element => !line.Own.Contains(element.Index) && placement.OnCap(element.Box).Meets(around))
            .Select(element => element.Index);
    }

    /// <summary>Handwriting has no order of letters: all of it stands in one place.</summary>
    private static IEnumerable<LinePlace> Places(Subject subject, SewnLine line)
    {
        var origin = SewableArea.XInFrame(subject.Seated.Zone);
        var (words, ofGlyphs) = (Words(line), WordsOf(line));
        var told =
            from glyph in line.Line?.Glyphs ?? []
            from element in glyph.Elements
            where line.Own.Contains(element)
            let begin = Tenths.FromMillimeters(glyph.FromMm).Value + origin
            let end = Tenths.FromMillimeters(glyph.ToMm).Value + origin
            select new LinePlace(element, line.IsConnected ? 0 : (begin + end) / 2, begin <= 0 && end >= 0)
            {
                First = glyph.Strokes[0].First,
                Word = ofGlyphs[glyph],
            };
        var beside =
            from letter in line.Beside
            from element in letter.Elements
            where line.Own.Contains(element)
            from part in JoinedLetters.Of(subject, element, letter, line.Row!.Height)
            select new LinePlace(element, line.IsConnected ? 0 : ((part.Left + part.Right) / 2) + origin, part.Left + origin <= 0 && part.Right + origin >= 0)
            {
                First = part.First,
                Word = words[element],
            };
        return told.Concat(beside);
    }

    /// <summary>Strokes that belong to handwriting: of its thread, as wide as half of it, and a letter's height away at most.</summary>
    private static IEnumerable<LinePlace> Swashes(Subject subject, SewnLine line, IReadOnlyList<SewnLine> lines)
    {
        if (!line.IsConnected)
            return [];
        var placement = Placement.Of(subject.Seated);
        var near = line.Box.Grown(Tenths.FromMillimeters(line.LetterHeightMm).Value);
        return
            from element in subject.Reading.Elements
            where element.Thread == line.Thread && element.Kind != ElementKind.Fill && !lines.Any(other => other.Own.Contains(element.Index))
            let box = placement.OnCap(element.Box)
            where 2 * box.Width >= line.Box.Width && SewnLines.LiesIn(box, near)
            select new LinePlace(element.Index, 0, true);
    }

    private static IEnumerable<(int Before, int After)> Held(DesignReading reading, SewnLine line)
    {
        if (line.LetterHeightMm >= LargeLetterMm)
            return [];
        var word = Words(line);
        return reading.Links
            .Where(link => line.Own.Contains(link.Before) && line.Own.Contains(link.After) && word[link.Before] == word[link.After])
            .Select(link => (link.Before, link.After));
    }

    /// <summary>The number of the word that an element begins in.</summary>
    private static Dictionary<int, int> Words(SewnLine line)
    {
        var (words, ofGlyphs) = (new Dictionary<int, int>(), WordsOf(line));
        foreach (var glyph in line.Line?.Glyphs ?? [])
        {
            foreach (var element in glyph.Elements)
                words.TryAdd(element, ofGlyphs[glyph]);
        }

        AddRow(line, words);
        return words;
    }

    private static Dictionary<Glyph, int> WordsOf(SewnLine line)
    {
        var words = new Dictionary<Glyph, int>(ReferenceEqualityComparer.Instance);
        var word = 0;
        foreach (var glyph in line.Line?.Glyphs ?? [])
        {
            words[glyph] = word;
            word += glyph.GapMm >= WordGapMm ? 1 : 0;
        }

        return words;
    }

    /// <summary>A letter that the text line lacks belongs to the word of its neighbor in the row.</summary>
    private static void AddRow(SewnLine line, Dictionary<int, int> words)
    {
        RowLetter? last = null;
        var word = words.Count == 0 ? 0 : words.Values.Max() + 1;
        foreach (var letter in line.Row?.Letters ?? [])
        {
            var goesOn = last is not null && letter.Box.Left - last.Box.Right < WordGapMm * Tenths.PerMillimeter;
            word = goesOn && words.TryGetValue(last!.Elements[0], out var same) ? same : word + 1;
            foreach (var element in letter.Elements)
                words.TryAdd(element, word);
            last = letter;
        }
    }

    /// <summary>A wide line across the seam whose letters stand apart on cloth.</summary>
    private static bool IsJudged(Subject subject, SewnLine line)
    {
        var rule = subject.Setup.Rules.Find(OrderRuleIds.TextLine);
        var origin = SewableArea.XInFrame(subject.Seated.Zone);
        return rule is not null
            && !line.IsConnected
            && line.LengthMm >= rule.Row.Parameters["silentBelowMm"]
            && line.Box.Left + origin < 0 && line.Box.Right + origin > 0
            && !LiesOnBase(subject, line);
    }

    private static bool LiesOnBase(Subject subject, SewnLine line)
    {
        Piece[] pieces =
        [
            .. subject.Reading.Pieces.Where(piece => line.Own.Contains(piece.Element)
                || line.Line?.Glyphs.Any(glyph => glyph.Strokes.Any(stroke => stroke.First <= piece.Last && stroke.Last >= piece.First)) == true),
        ];
        var area = pieces.Sum(piece => (double)piece.Cover.Area);
        return area > 0 && pieces.Sum(piece => subject.Ground[piece].OnCover * piece.Cover.Area) >= BaseShare * area;
    }
}
