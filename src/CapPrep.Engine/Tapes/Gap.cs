namespace CapPrep.Engine.Tapes;

/// <summary>
/// The records between two penetrations, counted as they come; the one place that says what is thread, cut or stop.
/// </summary>
internal struct Gap
{
    private int _run;
    private int _longestRun;

    /// <summary>Jump records since the last penetration.</summary>
    public int Jumps { get; private set; }

    /// <summary>A color stop lies in the gap.</summary>
    public bool Stopped { get; private set; }

    public void Add(RecordKind kind)
    {
        if (kind == RecordKind.ColorStop)
        {
            Stopped = true;
            _run = 0;
            return;
        }

        Jumps++;
        _longestRun = Math.Max(_longestRun, ++_run);
    }

    /// <summary>How the next penetration is connected to the one before.</summary>
    /// <param name="trimJumps">Consecutive jump records that mean a trim.</param>
    public readonly Relation RelationFor(int trimJumps) =>
        Stopped ? Relation.Stop : _longestRun >= trimJumps ? Relation.Cut : Relation.Thread;
}
