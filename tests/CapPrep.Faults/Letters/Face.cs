using CapPrep.FaultCorpus.Sewing;

namespace CapPrep.FaultCorpus.Letters;

/// <summary>How letters look and are sewn.</summary>
internal sealed record Face
{
    /// <summary>Of the capitals, mm.</summary>
    public double Height { get; init; } = 8;

    /// <summary>Width of the strokes, mm.</summary>
    public double Stroke { get; init; } = 1.3;

    public SewnAs As { get; init; } = SewnAs.Satin;

    /// <summary>Cross bars at the ends of stems, and strokes that swell.</summary>
    public bool Serifs { get; init; }

    /// <summary>Ends of strokes run to a point.</summary>
    public bool Tapers { get; init; }

    /// <summary>Letters joined by strokes, as in handwriting.</summary>
    public bool Joined { get; init; }

    /// <summary>Lean to the right, degrees.</summary>
    public double Lean { get; init; }

    /// <summary>Bare cloth between letters, mm.</summary>
    public double Gap { get; init; } = 1;

    /// <summary>Bare cloth between words, as a share of the height.</summary>
    public double WordGap { get; init; } = 0.6;

    public double Pitch { get; init; } = 0.4;

    public Under Under { get; init; } = Under.Center;

    /// <summary>Width of the letters against their drawing.</summary>
    public double Wide { get; init; } = 1;
}
