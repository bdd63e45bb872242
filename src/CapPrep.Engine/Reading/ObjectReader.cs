using System.Globalization;
using System.Text.Json;

namespace CapPrep.Engine.Reading;

/// <summary>
/// Reads the members of one JSON object by name and reports every fault with its pointer: wrong types, values out
/// of bounds and, when closed, members nobody asked for and members that stand twice. The last of two equal
/// members is the one read. A null is a fault: absent means unknown.
/// </summary>
public sealed class ObjectReader
{
    private readonly JsonElement _object;
    private readonly string _pointer;
    private readonly Faults _faults;
    private readonly List<string> _asked = [];

    internal ObjectReader(JsonElement element, string pointer, Faults faults)
    {
        _object = element;
        _pointer = pointer;
        _faults = faults;
    }

    public Faults Faults => _faults;

    public string Pointer => _pointer;

    /// <summary>JSON pointer (RFC 6901) to a member of this object.</summary>
    public string PointerTo(string name) => $"{_pointer}/{Escape(name)}";

    /// <summary>True when the member is there and not null.</summary>
    public bool Has(string name) => _object.TryGetProperty(name, out var value) && value.ValueKind != JsonValueKind.Null;

    /// <summary>Names in this object, each once, in the order of the bytes.</summary>
    public IReadOnlyList<string> Names => [.. _object.EnumerateObject().Select(member => member.Name).Distinct()];

    /// <summary>The raw element of a member, or null when absent; a JSON null is reported.</summary>
    public JsonElement? Element(string name)
    {
        _asked.Add(name);
        if (!_object.TryGetProperty(name, out var value))
            return null;
        if (value.ValueKind != JsonValueKind.Null)
            return value;
        _faults.WrongType(PointerTo(name), "A value", "null");
        return null;
    }

    /// <summary>Reports the member as missing unless it is there.</summary>
    public ObjectReader Require(params ReadOnlySpan<string> names)
    {
        foreach (var name in names)
        {
            if (!_object.TryGetProperty(name, out _))
                _faults.Required(PointerTo(name), name);
        }

        return this;
    }

    /// <summary>Text of 1 to <paramref name="longest"/> Unicode scalar values without control characters.</summary>
    public string? Text(string name, int longest)
    {
        if (Element(name) is not { } element)
            return null;
        return TextOf(element, PointerTo(name), longest);
    }

    /// <summary>As <see cref="Text"/>, for an element at any place.</summary>
    public string? TextOf(JsonElement element, string pointer, int longest)
    {
        if (element.ValueKind != JsonValueKind.String)
        {
            _faults.WrongType(pointer, "A text", Describe(element));
            return null;
        }

        if (Decoded(element) is not { } text)
        {
            _faults.Add(pointer, ViolationCodes.BadFormat, "The text holds half of a surrogate pair.");
            return null;
        }

        var length = text.EnumerateRunes().Count();
        if (length == 0)
            _faults.Add(pointer, ViolationCodes.BadFormat, "The text is empty.");
        else if (length > longest)
            _faults.Add(pointer, ViolationCodes.TooLong, $"{length} characters, at most {longest} allowed.");
        else if (text.EnumerateRunes().Any(System.Text.Rune.IsControl))
            _faults.Add(pointer, ViolationCodes.BadFormat, "The text holds control characters.");
        else
            return text;
        return null;
    }

    /// <summary>An id: lower-case letters, digits and hyphens, 1 to 63 characters, not beginning with a hyphen.</summary>
    public string? Id(string name)
    {
        if (Text(name, 63) is not { } text)
            return null;
        if (IsId(text))
            return text;
        _faults.Add(PointerTo(name), ViolationCodes.BadFormat, "An id holds a to z, 0 to 9 and hyphens, and begins with no hyphen.");
        return null;
    }

    public static bool IsId(string text) =>
        text.Length is >= 1 and <= 63
        && text[0] != '-'
        && text.All(c => c is >= 'a' and <= 'z' or >= '0' and <= '9' or '-');

    public int? Integer(string name, int minimum, int maximum)
    {
        if (Element(name) is not { } element)
            return null;
        if (element.ValueKind == JsonValueKind.Number && element.TryGetInt64(out var whole))
        {
            if (whole >= minimum && whole <= maximum)
                return (int)whole;
            _faults.OutOfRange(PointerTo(name), whole, minimum, maximum);
            return null;
        }

        _faults.WrongType(PointerTo(name), "A whole number", Describe(element));
        return null;
    }

    public double? Number(string name, double minimum, double maximum)
    {
        if (Element(name) is not { } element)
            return null;
        return NumberOf(element, PointerTo(name), minimum, maximum);
    }

    /// <summary>As <see cref="Number"/>, for an element at any place.</summary>
    public double? NumberOf(JsonElement element, string pointer, double minimum, double maximum)
    {
        if (element.ValueKind != JsonValueKind.Number || !element.TryGetDouble(out var value) || !double.IsFinite(value))
        {
            _faults.WrongType(pointer, "A number", Describe(element));
            return null;
        }

        if (value >= minimum && value <= maximum)
            return value;
        _faults.OutOfRange(pointer, value, minimum, maximum);
        return null;
    }

    public bool? Flag(string name)
    {
        if (Element(name) is not { } element)
            return null;
        if (element.ValueKind is JsonValueKind.True or JsonValueKind.False)
            return element.GetBoolean();
        _faults.WrongType(PointerTo(name), "true or false", Describe(element));
        return null;
    }

    /// <summary>One of the named words.</summary>
    public T? Choice<T>(string name, Words<T> words)
        where T : struct, Enum
    {
        if (Element(name) is not { } element)
            return null;
        return ChoiceOf(element, PointerTo(name), words);
    }

    /// <summary>As <see cref="Choice"/>, for an element at any place.</summary>
    public T? ChoiceOf<T>(JsonElement element, string pointer, Words<T> words)
        where T : struct, Enum
    {
        if (element.ValueKind != JsonValueKind.String)
        {
            _faults.WrongType(pointer, "A text", Describe(element));
            return null;
        }

        var text = Decoded(element) ?? "";
        if (words.TryParse(text, out var value))
            return value;
        _faults.NotAllowed(pointer, ViolationCodes.BadFormat, $"'{Shortened(text)}' is none of the words allowed here.", words.All);
        return null;
    }

    /// <summary>A color written <c>#RRGGBB</c>; given back in upper case.</summary>
    public string? Color(string name)
    {
        if (Text(name, 7) is not { } text)
            return null;
        if (text.Length == 7 && text[0] == '#' && text.AsSpan(1).IndexOfAnyExcept("0123456789abcdefABCDEF") < 0)
            return text.ToUpperInvariant();
        _faults.Add(PointerTo(name), ViolationCodes.BadFormat, "A color is written #RRGGBB.");
        return null;
    }

    /// <summary>A calendar day written <c>YYYY-MM-DD</c>.</summary>
    public DateOnly? Date(string name)
    {
        if (Text(name, 10) is not { } text)
            return null;
        if (DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day))
            return day;
        _faults.Add(PointerTo(name), ViolationCodes.BadFormat, "A day is written YYYY-MM-DD.");
        return null;
    }

    /// <summary>A nested object.</summary>
    public T? Object<T>(string name, Func<ObjectReader, T?> read)
        where T : class
    {
        if (Element(name) is not { } element)
            return null;
        return JsonBody.Read(element, PointerTo(name), _faults, read);
    }

    /// <summary>
    /// An array of <paramref name="fewest"/> to <paramref name="most"/> items. Faulty items are left out, reported.
    /// </summary>
    public IReadOnlyList<T>? Items<T>(string name, int fewest, int most, Func<JsonElement, string, T?> read)
        where T : class
    {
        if (Element(name) is not { } element)
            return null;
        var pointer = PointerTo(name);
        if (element.ValueKind != JsonValueKind.Array)
        {
            _faults.WrongType(pointer, "An array", Describe(element));
            return null;
        }

        if (element.GetArrayLength() is var length && (length < fewest || length > most))
        {
            _faults.OutOfRange(pointer, length, fewest, most);
            return null;
        }

        var items = new List<T>(length);
        var index = 0;
        foreach (var item in element.EnumerateArray())
        {
            if (read(item, $"{pointer}/{index++}") is { } value)
                items.Add(value);
        }

        return items;
    }

    /// <summary>An array of objects.</summary>
    public IReadOnlyList<T>? Objects<T>(string name, int fewest, int most, Func<ObjectReader, T?> read)
        where T : class =>
        Items(name, fewest, most, (element, pointer) => JsonBody.Read(element, pointer, _faults, read));

    /// <summary>An array of texts.</summary>
    public IReadOnlyList<string>? Texts(string name, int most, int longest) =>
        Items(name, 0, most, (element, pointer) => TextOf(element, pointer, longest));

    /// <summary>Reports members that nobody asked for and members that stand more than once.</summary>
    internal void Close()
    {
        var seen = new HashSet<string>(StringComparer.Ordinal);
        var told = new HashSet<string>(StringComparer.Ordinal);
        foreach (var name in _object.EnumerateObject().Select(member => member.Name))
        {
            if (!seen.Add(name) && told.Add(name))
                _faults.Add(PointerTo(name), ViolationCodes.DuplicateField, $"The field '{Shortened(name)}' stands more than once.");
        }

        foreach (var name in Names)
        {
            if (!_asked.Contains(name))
            {
                _faults.NotAllowed(
                    PointerTo(name),
                    ViolationCodes.UnknownField,
                    $"{(_pointer.Length == 0 ? _faults.Noun : "This object")} has no field '{Shortened(name)}'.",
                    [.. _asked.Distinct().Order(StringComparer.Ordinal)]);
            }
        }
    }

    internal static string Describe(JsonElement element) => element.ValueKind switch
    {
        JsonValueKind.Object => "an object",
        JsonValueKind.Array => "an array",
        JsonValueKind.String => "a text",
        JsonValueKind.Number => "the number " + Shortened(element.GetRawText()),
        JsonValueKind.True or JsonValueKind.False => "true or false",
        _ => "null",
    };

    private static string? Decoded(JsonElement element)
    {
        try
        {
            return element.GetString();
        }
        catch (InvalidOperationException)
        {
            return null;
        }
    }

    private static string Shortened(string text) => text.Length <= 60 ? text : string.Concat(text.AsSpan(0, 57), "...");

    private static string Escape(string name) => name.Replace("~", "~0", StringComparison.Ordinal).Replace("/", "~1", StringComparison.Ordinal);
}
