namespace CapPrep.Engine.Reading;

/// <summary>
/// One fault found while reading bytes from outside. A reader reports every fault it finds, not the first.
/// </summary>
/// <param name="Part">Where it was: <c>ticket</c>, <c>tape</c>, <c>body</c>, <c>query</c> or <c>header</c>.</param>
/// <param name="Code">One of <see cref="ViolationCodes"/>.</param>
/// <param name="Message">A sentence for the person who sent it; never a type name, path or stack.</param>
public sealed record Violation(string Part, string Code, string Message)
{
    /// <summary>JSON pointer (RFC 6901) to the member, for JSON parts.</summary>
    public string? Pointer { get; init; }

    /// <summary>Byte offset from the start of the file, for tapes and broken JSON.</summary>
    public long? ByteOffset { get; init; }

    /// <summary>Least value allowed, in the member's own unit.</summary>
    public double? Minimum { get; init; }

    /// <summary>Greatest value allowed, in the member's own unit.</summary>
    public double? Maximum { get; init; }

    /// <summary>The values that would have been accepted, sorted; empty when there is no short list.</summary>
    public IReadOnlyList<string> Allowed { get; init; } = [];
}

/// <summary>The codes a <see cref="Violation"/> can carry.</summary>
public static class ViolationCodes
{
    public const string Required = "required";
    public const string UnknownField = "unknown-field";
    public const string DuplicateField = "duplicate-field";
    public const string WrongType = "wrong-type";
    public const string OutOfRange = "out-of-range";
    public const string TooLong = "too-long";
    public const string BadFormat = "bad-format";
    public const string UnknownId = "unknown-id";
    public const string RetiredId = "retired-id";
    public const string Contradicts = "contradicts";
    public const string ShaMismatch = "sha-mismatch";

    public const string TapeEmpty = "tape-empty";
    public const string TapeTooShort = "tape-too-short";
    public const string TapeIsText = "tape-is-text";
    public const string TapeIsArchive = "tape-is-archive";
    public const string TapeIsPicture = "tape-is-picture";
    public const string NoStitch = "no-stitch";
    public const string ImpossibleRecords = "impossible-records";
    public const string TooManyRecords = "too-many-records";
}
