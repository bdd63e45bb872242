using CapPrep.Engine.Trade;

namespace CapPrep.Drawing;

/// <summary>What a sheet prints that the preparation does not know: the job it belongs to and how the shop prints.</summary>
public sealed record JobFacts
{
    /// <summary>Job number; null where a tape was checked without a job.</summary>
    public required int? Number { get; init; }

    /// <summary>From 1.</summary>
    public int Revision { get; init; } = 1;

    /// <summary>Name of the tape to sew as the machine shows it, e.g. <c>10427.DST</c>.</summary>
    public required string TapeName { get; init; }

    /// <summary>First eight hex digits of the SHA-256 of the tape to sew; null when there is none.</summary>
    public string? TapeSha8 { get; init; }

    /// <summary>Name of the file as it came in; empty when it had none.</summary>
    public required string FileName { get; init; }

    public required DateTimeOffset Received { get; init; }

    /// <summary>Put in front of the text of the code, at most 60 characters.</summary>
    public string QrPrefix { get; init; } = "";

    public Paper Paper { get; init; } = Paper.A4;

    public LengthUnits Units { get; init; } = LengthUnits.Mm;

    /// <summary>Two letters, e.g. <c>en</c>.</summary>
    public string Language { get; init; } = "en";
}
