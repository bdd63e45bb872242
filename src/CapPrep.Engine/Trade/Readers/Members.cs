using System.Globalization;
using System.Text.Json;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Reading;

namespace CapPrep.Engine.Trade.Readers;

/// <summary>Kinds of member that only catalog bodies have.</summary>
internal static class Members
{
    /// <summary>Furthest a point of a cap lies from its origin, mm.</summary>
    private const double Reach = 400;

    internal static void Contradicts(this ObjectReader reader, string name, string message) =>
        reader.Faults.Add(reader.PointerTo(name), ViolationCodes.Contradicts, message);

    /// <summary>One of a few words that are no enumeration.</summary>
    internal static string? Word(this ObjectReader reader, string name, params string[] allowed)
    {
        if (reader.Text(name, 60) is not { } word)
            return null;
        if (allowed.Contains(word))
            return word;
        reader.Faults.NotAllowed(reader.PointerTo(name), ViolationCodes.BadFormat, $"'{word}' is none of the words allowed here.", allowed);
        return null;
    }

    internal static IReadOnlyList<string> Ids(this ObjectReader reader, string name, int fewest, int most) =>
        reader.Items(name, fewest, most, (element, pointer) =>
        {
            if (reader.TextOf(element, pointer, 63) is not { } id)
                return null;
            if (ObjectReader.IsId(id))
                return id;
            reader.Faults.Add(pointer, ViolationCodes.BadFormat, "An id holds a to z, 0 to 9 and hyphens, and begins with no hyphen.");
            return null;
        }) ?? [];

    internal static IReadOnlyList<T> Choices<T>(this ObjectReader reader, string name, int fewest)
        where T : struct, Enum =>
        reader.Each(name, fewest, Words<T>.Standard.All.Count, (element, pointer) => reader.ChoiceOf(element, pointer, Words<T>.Standard));

    internal static IReadOnlyList<double> Numbers(this ObjectReader reader, string name, int most, double minimum, double maximum) =>
        reader.Each(name, 0, most, (element, pointer) => reader.NumberOf(element, pointer, minimum, maximum));

    internal static IReadOnlyList<int> Integers(this ObjectReader reader, string name, int most, int minimum, int maximum) =>
        reader.Each<int>(name, 0, most, (element, pointer) =>
        {
            if (reader.NumberOf(element, pointer, minimum, maximum) is not { } number)
                return null;
            if (number == Math.Floor(number))
                return (int)number;
            reader.Faults.WrongType(pointer, "A whole number", number.ToString(CultureInfo.InvariantCulture));
            return null;
        });

    /// <summary>Points written <c>[x, y]</c>.</summary>
    internal static IReadOnlyList<PointMm> Points(this ObjectReader reader, string name, int fewest, int most) =>
        reader.Each(name, fewest, most, (element, pointer) => PointOf(reader, element, pointer));

    private static PointMm? PointOf(ObjectReader reader, JsonElement element, string pointer)
    {
        if (element.ValueKind != JsonValueKind.Array || element.GetArrayLength() != 2)
        {
            reader.Faults.WrongType(pointer, "A point [x, y]", element.ValueKind == JsonValueKind.Array ? "another array" : "no array");
            return null;
        }

        var x = reader.NumberOf(element[0], $"{pointer}/0", -Reach, Reach);
        var y = reader.NumberOf(element[1], $"{pointer}/1", -Reach, Reach);
        return x is null || y is null ? null : new PointMm(x.Value, y.Value);
    }

    private static IReadOnlyList<T> Each<T>(
        this ObjectReader reader, string name, int fewest, int most, Func<JsonElement, string, T?> read)
        where T : struct =>
        [.. (reader.Items(name, fewest, most, (element, pointer) => (object?)read(element, pointer)) ?? []).Cast<T>()];
}
