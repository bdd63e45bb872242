using System.Globalization;
using static System.FormattableString;

namespace CapPrep.Engine.Reading;

/// <summary>The faults met while reading one part, in the order they were met.</summary>
/// <param name="part">The part's name, as <see cref="Violation.Part"/>.</param>
/// <param name="noun">What the part is in a sentence, with its article: "A ticket", "A cap style".</param>
public sealed class Faults(string part, string noun)
{
    private readonly List<Violation> _violations = [];

    public IReadOnlyList<Violation> Violations => _violations;

    public bool Any => _violations.Count > 0;

    public string Noun => noun;

    public void Add(Violation violation) => _violations.Add(violation);

    public void Add(string pointer, string code, string message) =>
        Add(new Violation(part, code, message) { Pointer = pointer });

    public void Required(string pointer, string name) =>
        Add(pointer, ViolationCodes.Required, $"{OwnerOf(pointer[..Math.Max(pointer.LastIndexOf('/'), 0)])} needs a field '{name}'.");

    public void WrongType(string pointer, string wanted, string found) =>
        Add(pointer, ViolationCodes.WrongType, $"{wanted} expected, {found} found.");

    public void OutOfRange(string pointer, double value, double minimum, double maximum) =>
        OutOfRange(pointer, value.ToString(CultureInfo.InvariantCulture), minimum, maximum);

    /// <summary>As the other, with the value as the caller wrote it.</summary>
    public void OutOfRange(string pointer, string value, double minimum, double maximum) =>
        OutOfBounds(pointer, Invariant($"{value} is not between {minimum} and {maximum}."), minimum, maximum);

    /// <summary>An array with too few or too many items.</summary>
    public void WrongCount(string pointer, int count, int fewest, int most) =>
        OutOfBounds(pointer, Invariant($"{count} items found, {fewest} to {most} allowed."), fewest, most);

    /// <param name="counted">What is counted, in the plural.</param>
    public void TooLong(string pointer, string counted, int count, int most) =>
        Add(new Violation(part, ViolationCodes.TooLong, Invariant($"{count} {counted} found, at most {most} allowed."))
        {
            Pointer = pointer,
            Maximum = most,
        });

    public void NotAllowed(string pointer, string code, string message, IReadOnlyList<string> allowed) =>
        Add(new Violation(part, code, message) { Pointer = pointer, Allowed = allowed });

    public void At(long byteOffset, string code, string message) =>
        Add(new Violation(part, code, message) { ByteOffset = byteOffset });

    /// <summary>True when the member at a pointer, or one inside it, has a fault.</summary>
    internal bool Under(string pointer) =>
        _violations.Any(fault => fault.Pointer == pointer || fault.Pointer?.StartsWith(pointer + "/", StringComparison.Ordinal) == true);

    /// <summary>What an object is in a sentence: the part's noun for the outermost one.</summary>
    internal string OwnerOf(string pointer) => pointer.Length == 0 ? noun : "This object";

    private void OutOfBounds(string pointer, string message, double minimum, double maximum) =>
        Add(new Violation(part, ViolationCodes.OutOfRange, message)
        {
            Pointer = pointer,
            Minimum = minimum,
            Maximum = maximum,
        });
}
