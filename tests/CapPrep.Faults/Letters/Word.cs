using CapPrep.FaultCorpus.Sewing;

namespace CapPrep.FaultCorpus.Letters;

/// <summary>In which order the letters of a line are sewn.</summary>
internal enum LineOrder
{
    /// <summary>From the middle to the right end, back to the middle, to the left end (fact row Q05).</summary>
    Outward,

    /// <summary>The same, left half first.</summary>
    OutwardLeftFirst,
    LeftToRight,
    RightToLeft,
}

/// <summary>A line of text.</summary>
internal sealed record Word(string Name, string Text, Face Face, BaseLine Base)
{
    public LineOrder Order { get; init; } = LineOrder.Outward;

    /// <summary>Bare cloth between two middle letters, mm; 0: as between all.</summary>
    public double MiddleGap { get; init; }

    /// <summary>The space between two words, else the middle gap, lies on the base line's foot instead of the middle of the line.</summary>
    public bool GapOnFoot { get; init; }

    /// <summary>The line is moved so far right, mm.</summary>
    public double Offset { get; init; }

    private double Pad => Face.As == SewnAs.Running ? 0 : Face.Stroke;

    /// <summary>From edge to edge along the base line, mm.</summary>
    public double Length => Layout().Sum(spot => spot.Width) + Pad + Gaps();

    /// <summary>Letters in the order they are sewn.</summary>
    public IReadOnlyList<Part> Parts()
    {
        var spots = Layout();
        var from = Offset - Foot(spots) + (Pad / 2);
        var letters = new List<(Letter Letter, double From, double To)>();
        foreach (var (sign, width, gapAfter) in spots)
        {
            letters.Add((Make(sign, width, from, letters.Count), from - (Pad / 2), from + width + (Pad / 2)));
            from += width + gapAfter;
        }

        return [.. Ordered(letters)];
    }

    /// <summary>Way from the line's left edge to what stands on the foot.</summary>
    private double Foot(List<(char Sign, double Width, double GapAfter)> spots)
    {
        if (!GapOnFoot || spots.Count < 2)
            return Length / 2;
        var space = Text.IndexOf(' ');
        var before = space < 0 ? spots.Count / 2 : space;
        var edge = spots.Take(before).Sum(spot => spot.Width + spot.GapAfter);
        return edge + (Pad / 2) - ((spots[before - 1].GapAfter - Pad) / 2) - (Pad / 2);
    }

    private Letter Make(char sign, double width, double from, int index) => new(sign, Face, Base.Place(from, width), Leftward: false)
    {
        Name = $"{Name}.{index}{sign}",
        Line = Name,
        Glyph = index,
    };

    private IEnumerable<Part> Ordered(List<(Letter Letter, double From, double To)> letters)
    {
        var middle = letters.Where(l => l.From < 0 && l.To > 0).Select(l => l.Letter).ToList();
        var right = letters.Where(l => l.From >= 0).Select(l => l.Letter);
        var left = letters.Where(l => l.To <= 0).Select(l => l.Letter with { Leftward = true }).Reverse();
        return Order switch
        {
            LineOrder.LeftToRight => letters.Select(l => l.Letter),
            LineOrder.RightToLeft => letters.Select(l => l.Letter with { Leftward = true }).Reverse(),
            LineOrder.Outward => [.. middle, .. right, .. left],
            _ => [.. middle.Select(l => l with { Leftward = true }), .. left, .. right],
        };
    }

    private List<(char Sign, double Width, double GapAfter)> Layout()
    {
        var gap = Face.Gap + Pad + (Face.Serifs ? Face.Stroke : 0);
        var spots = new List<(char Sign, double Width, double GapAfter)>();
        foreach (var sign in Text)
        {
            if (sign == ' ')
                spots[^1] = spots[^1] with { GapAfter = Math.Max(Math.Max(gap, (Face.WordGap * Face.Height) + Pad), MiddleGap + Pad) };
            else
                spots.Add((sign, Letter.Width(sign, Face), gap));
        }

        if (MiddleGap > 0 && spots.Count % 2 == 0 && !Text.Contains(' '))
            spots[(spots.Count / 2) - 1] = spots[(spots.Count / 2) - 1] with { GapAfter = Math.Max(gap, MiddleGap + Pad) };
        return spots;
    }

    private double Gaps() => Layout().SkipLast(1).Sum(spot => spot.GapAfter);
}
