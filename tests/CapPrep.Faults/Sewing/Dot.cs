using CapPrep.FaultCorpus.Geometry;

namespace CapPrep.FaultCorpus.Sewing;

/// <summary>What a digitizer would call the stitches of a piece.</summary>
public enum SewnAs
{
    Satin,
    Fill,
    Running,
}

/// <summary>What a stitch is for.</summary>
public enum Purpose
{
    /// <summary>To be seen.</summary>
    Top,
    Underlay,
    Tie,

    /// <summary>Thread from one place to another, hidden by what is sewn later.</summary>
    Travel,
}

/// <summary>How a needle point hangs on the one before it.</summary>
public enum Joint
{
    Thread,

    /// <summary>A move with the needle up, the thread uncut.</summary>
    Float,
    Trim,
    Stop,
}

/// <summary>One needle point, as meant.</summary>
internal readonly record struct Dot(Vec At, SewnAs As, Purpose Purpose = Purpose.Top, Joint Joint = Joint.Thread);
