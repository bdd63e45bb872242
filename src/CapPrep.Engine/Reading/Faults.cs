using System.Globalization;

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
        Add(pointer, ViolationCodes.Required, $"{noun} needs a field '{name}'.");

    public void WrongType(string pointer, string wanted, string found) =>
        Add(pointer, ViolationCodes.WrongType, $"{wanted} expected, {found} found.");

    public void OutOfRange(string pointer, double value, double minimum, double maximum) =>
        Add(new Violation(
            part,
            ViolationCodes.OutOfRange,
            string.Create(CultureInfo.InvariantCulture, $"{value} is not between {minimum} and {maximum}."))
        {
            Pointer = pointer,
            Minimum = minimum,
            Maximum = maximum,
        });

    public void NotAllowed(string pointer, string code, string message, IReadOnlyList<string> allowed) =>
        Add(new Violation(part, code, message) { Pointer = pointer, Allowed = allowed });

    public void At(long byteOffset, string code, string message) =>
        Add(new Violation(part, code, message) { ByteOffset = byteOffset });
}
