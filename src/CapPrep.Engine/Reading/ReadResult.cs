using System.Diagnostics.CodeAnalysis;

namespace CapPrep.Engine.Reading;

/// <summary>What a reader gives back: a value, or every fault that keeps it from being one.</summary>
public sealed class ReadResult<T>
    where T : class
{
    private ReadResult(T? value, IReadOnlyList<Violation> violations)
    {
        Value = value;
        Violations = violations;
    }

    /// <summary>The value; null exactly when <see cref="Violations"/> is not empty.</summary>
    public T? Value { get; }

    /// <summary>Every fault found, in the order in which the reader looks.</summary>
    public IReadOnlyList<Violation> Violations { get; }

    [MemberNotNullWhen(true, nameof(Value))]
    public bool Succeeded => Value is not null;

    public static ReadResult<T> Of(T value) => new(value, []);

    public static ReadResult<T> Refused(IReadOnlyList<Violation> violations)
    {
        ArgumentOutOfRangeException.ThrowIfZero(violations.Count);
        return new(null, violations);
    }
}
