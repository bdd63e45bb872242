using System.Globalization;
using System.Runtime.InteropServices;
using System.Text;
using System.Text.Json;

namespace CapPrep.Engine.Reading;

/// <summary>
/// Reads the members of one JSON object by name and reports every fault with its pointer: wrong types, values out
/// of bounds and, when closed, members nobody asked for and members that stand twice. The last of two equal
/// members is the one read. A null is a fault: absent means unknown.
/// </summary>
public sealed class ObjectReader
{
    private readonly string _pointer;
    private readonly Faults _faults;
    private readonly Dictionary<string, JsonElement> _members = new(StringComparer.Ordinal);
    private readonly List<string> _names = [];
    private readonly HashSet<string> _twice = new(StringComparer.Ordinal);
    private readonly HashSet<string> _asked = new(StringComparer.Ordinal);

    internal ObjectReader(JsonElement element, string pointer, Faults faults)
    {
        _pointer = pointer;
        _faults = faults;
        foreach (var member in element.EnumerateObject())
            Enter(member);
    }

    public Faults Faults => _faults;

    public string Pointer => _pointer;

    /// <summary>JSON pointer (RFC 6901) to a member of this object.</summary>
    public string PointerTo(string name) => $"{_pointer}/{Escape(name)}";

    /// <summary>True when the member is there and not null.</summary>
    public bool Has(string name) => _members.TryGetValue(name, out var value) && value.ValueKind != JsonValueKind.Null;

    /// <summary>True when the member is there, be it null.</summary>
    internal bool Holds(string name) => _members.ContainsKey(name);

    /// <summary>Names in this object, each once, in the order of the bytes.</summary>
    public IReadOnlyList<string> Names => _names;

    /// <summary>The raw element of a member, or null when absent; a JSON null is reported.</summary>
    public JsonElement? Element(string name)
    {
        _asked.Add(name);
        if (!_members.TryGetValue(name, out var value))
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
            if (!Holds(name))
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
            _faults.Add(pointer, ViolationCodes.BadFormat, HalfPair);
            return null;
        }

        var length = text.EnumerateRunes().Count();
        if (length == 0)
            _faults.Add(pointer, ViolationCodes.BadFormat, "The text is empty.");
        else if (length > longest)
            _faults.TooLong(pointer, "characters", length, longest);
        else if (text.EnumerateRunes().Any(Rune.IsControl))
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

    /// <summary>A whole number, however it is written: 48, 48.0 and 4.8e1 are one value.</summary>
    public int? Integer(string name, int minimum, int maximum)
    {
        if (Element(name) is not { } element)
            return null;
        if (element.ValueKind != JsonValueKind.Number || element.GetDouble() is var value && Math.Truncate(value) != value)
        {
            _faults.WrongType(PointerTo(name), "A whole number", Describe(element));
            return null;
        }

        return (int?)NumberOf(element, PointerTo(name), minimum, maximum);
    }

    public double? Number(string name, double minimum, double maximum)
    {
        if (Element(name) is not { } element)
            return null;
        return NumberOf(element, PointerTo(name), minimum, maximum);
    }

    /// <summary>As <see cref="Number"/>, for an element at any place. Minus zero is read as zero.</summary>
    public double? NumberOf(JsonElement element, string pointer, double minimum, double maximum)
    {
        if (element.ValueKind != JsonValueKind.Number)
        {
            _faults.WrongType(pointer, "A number", Describe(element));
            return null;
        }

        var value = element.GetDouble();
        if (value >= minimum && value <= maximum)
            return value == 0 ? 0 : value;
        _faults.OutOfRange(pointer, Shown(element.GetRawText()), minimum, maximum);
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

        var text = Decoded(element) ?? element.GetRawText();
        if (words.TryParse(text, out var value))
            return value;
        _faults.NotAllowed(
            pointer,
            ViolationCodes.BadFormat,
            $"'{Shown(text)}' is none of the words allowed here.",
            [.. words.All.Order(StringComparer.Ordinal)]);
        return null;
    }

    /// <summary>A color written <c>#RRGGBB</c>; given back in upper case.</summary>
    public string? Color(string name) => Written(name, "A color is written #RRGGBB.", ColorOf);

    /// <summary>A calendar day written <c>YYYY-MM-DD</c>.</summary>
    public DateOnly? Date(string name) =>
        Written(name, "A day is written YYYY-MM-DD.", DayOf) is { } day
            ? DateOnly.ParseExact(day, DayFormat, CultureInfo.InvariantCulture)
            : null;

    /// <summary>A SHA-256 as 64 hex digits; given back in lower case.</summary>
    public string? Sha256(string name) => Written(name, "A SHA-256 is written as 64 hex digits.", DigestOf);

    /// <summary>
    /// Any JSON, null included, byte for byte as it stands, of at most <paramref name="mostBytes"/> bytes and
    /// <paramref name="mostLevels"/> levels of nesting (a value that is no object and no array has none).
    /// </summary>
    public ReadOnlyMemory<byte>? Verbatim(string name, int mostBytes, int mostLevels)
    {
        _asked.Add(name);
        if (!_members.TryGetValue(name, out var element))
            return null;
        var bytes = JsonMarshal.GetRawUtf8Value(element);
        if (bytes.Length > mostBytes)
            _faults.TooLong(PointerTo(name), "bytes", bytes.Length, mostBytes);
        else if (Levels(bytes) is var levels && levels > mostLevels)
            _faults.TooLong(PointerTo(name), "levels of nesting", levels, mostLevels);
        else
            return bytes.ToArray();
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
            _faults.WrongCount(pointer, length, fewest, most);
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
        foreach (var name in _names.Where(_twice.Contains))
            _faults.Add(PointerTo(name), ViolationCodes.DuplicateField, $"The field '{Shown(name)}' stands more than once.");

        string[] allowed = [.. _asked.Order(StringComparer.Ordinal)];
        var owner = _faults.OwnerOf(_pointer);
        foreach (var name in _names.Where(name => !_asked.Contains(name)))
            _faults.NotAllowed(PointerTo(name), ViolationCodes.UnknownField, $"{owner} has no field '{Shown(name)}'.", allowed);
    }

    private void Enter(JsonProperty member)
    {
        if (Decoded(() => member.Name) is not { } name)
            _faults.Add(_pointer, ViolationCodes.BadFormat, "A field's name holds half of a surrogate pair.");
        else if (_members.TryAdd(name, member.Value))
            _names.Add(name);
        else
        {
            _members[name] = member.Value;
            _twice.Add(name);
        }
    }

    internal static string Describe(JsonElement element) => element.ValueKind switch
    {
        JsonValueKind.Object => "an object",
        JsonValueKind.Array => "an array",
        JsonValueKind.String => "a text",
        JsonValueKind.Number => "the number " + Shown(element.GetRawText()),
        JsonValueKind.True or JsonValueKind.False => "true or false",
        _ => "null",
    };

    private const string HalfPair = "The text holds half of a surrogate pair.";

    private const string DayFormat = "yyyy-MM-dd";

    /// <summary>A text that has one way to be written; <paramref name="normal"/> gives that, or null.</summary>
    private string? Written(string name, string rule, Func<string, string?> normal)
    {
        if (Element(name) is not { } element)
            return null;
        if (element.ValueKind != JsonValueKind.String)
            _faults.WrongType(PointerTo(name), "A text", Describe(element));
        else if (Decoded(element) is { } text && normal(text) is { } written)
            return written;
        else
            _faults.Add(PointerTo(name), ViolationCodes.BadFormat, rule);
        return null;
    }

    private static string? ColorOf(string text) =>
        text.Length == 7 && text[0] == '#' && text.Skip(1).All(char.IsAsciiHexDigit) ? text.ToUpperInvariant() : null;

    private static string? DayOf(string text) =>
        DateOnly.TryParseExact(text, DayFormat, CultureInfo.InvariantCulture, DateTimeStyles.None, out _) ? text : null;

    private static string? DigestOf(string text) =>
        text.Length == 64 && text.All(char.IsAsciiHexDigit) ? text.ToLowerInvariant() : null;

    private static int Levels(ReadOnlySpan<byte> json)
    {
        var reader = new Utf8JsonReader(json);
        var deepest = 0;
        while (reader.Read())
        {
            if (reader.TokenType is JsonTokenType.StartObject or JsonTokenType.StartArray)
                deepest = Math.Max(deepest, reader.CurrentDepth + 1);
        }

        return deepest;
    }

    private static string? Decoded(JsonElement element) => Decoded(element.GetString);

    /// <summary>Null for escapes that make no text: the only fault left in strings of a body that is UTF-8.</summary>
    private static string? Decoded(Func<string?> decode)
    {
        try
        {
            return decode();
        }
        catch (InvalidOperationException)
        {
            return null;
        }
    }

    /// <summary>What the caller wrote, fit to stand in a sentence: no control characters, at most 60 characters.</summary>
    private static string Shown(string text)
    {
        Rune[] runes = [.. text.EnumerateRunes().Take(61)];
        var shown = string.Concat(runes.Take(runes.Length > 60 ? 57 : 60).Select(rune => Rune.IsControl(rune) ? Rune.ReplacementChar : rune));
        return runes.Length > 60 ? shown + "..." : shown;
    }

    private static string Escape(string name) => name.Replace("~", "~0", StringComparison.Ordinal).Replace("/", "~1", StringComparison.Ordinal);
}
