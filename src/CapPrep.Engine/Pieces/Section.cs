using CapPrep.Engine.Measures;
using CapPrep.Engine.Tapes;

namespace CapPrep.Engine.Pieces;

/// <summary>A span in the making.</summary>
internal sealed class Section
{
    /// <param name="stitches">The stitches.</param>
    /// <param name="strand">Strand it lies in, from 0.</param>
    /// <param name="interval">Its penetrations.</param>
    /// <param name="class">What its stitches are.</param>
    /// <param name="chain">The rows it consists of, or null.</param>
    public Section(StitchSequence stitches, int strand, Interval interval, StitchClass @class, Chain? chain)
    {
        (Strand, Interval, Class, Chain) = (strand, interval, @class, chain);
        Rows = chain is null ? null : ChainMeasures.Of(chain);
        Block = stitches.Block[interval.First];
        Box = stitches.BoxOf(interval);
    }

    public int Strand { get; }

    public int Block { get; }

    public Interval Interval { get; }

    public StitchClass Class { get; }

    /// <summary>Null when it has no rows.</summary>
    public Chain? Chain { get; }

    /// <summary>Sizes of its rows, or null.</summary>
    public ChainMeasures? Rows { get; }

    public Box Box { get; }

    public SpanRole Role { get; set; } = SpanRole.Visible;

    /// <summary>Share of its cells under closed stitches that are sewn later, percent.</summary>
    public int HiddenPercent { get; set; }

    /// <summary>The same with cover of the same thread only.</summary>
    public int HiddenBySameThreadPercent { get; set; }

    /// <summary>Share of its cells over closed stitches of the same thread that are sewn before, percent.</summary>
    public int OnTopPercent { get; set; }

    /// <summary>Piece it is a part of, or the one that covers it; -1 for none.</summary>
    public int Piece { get; set; } = -1;

    /// <summary>Cells its stitches run over. Painted once the whole reading is known to stay within bounds.</summary>
    public Cover Cover { get; set; } = Cover.None;

    /// <summary>
    /// Cells it hides: the cover, for closed stitches all cloth between their rows or lines, for a pattern the places
    /// where no cloth shows.
    /// </summary>
    public Cover Blanket { get; set; } = Cover.None;

    /// <summary>The area of the ring lines it is a part of, one object for all of them; null for everything else.</summary>
    public Cover? Rings { get; init; }

    /// <summary>The finder of its class was near a limit.</summary>
    public bool IsDoubtful { get; set; }

    /// <summary>Satin, fill or ring lines: nothing shows through.</summary>
    public bool IsClosed => Class is StitchClass.Satin or StitchClass.Fill or StitchClass.DenseRunning;

    /// <summary>It may be there for what is sewn over it: open stitches, and so few rows that they can be lines beside each other.</summary>
    public bool MayBeHidden => !IsClosed || Rows?.Rows < Classifier.ClearRows;

    /// <summary>Something may lie under it unseen: closed stitches, and a pattern where it is closed.</summary>
    public bool Hides => IsClosed || (Class == StitchClass.Pattern && Blanket.Area > 0);
}
