using System.Globalization;
using System.Text.Json;
using CapPrep.Engine.Reading;

namespace CapPrep.Engine.Tickets;

/// <summary>Writes members that may be absent: a null writes nothing.</summary>
internal static class OptionalMembers
{
    internal static Utf8JsonWriter Text(this Utf8JsonWriter writer, string name, string? value)
    {
        if (value is not null)
            writer.WriteString(name, value);
        return writer;
    }

    internal static Utf8JsonWriter Integer(this Utf8JsonWriter writer, string name, int? value)
    {
        if (value is { } number)
            writer.WriteNumber(name, number);
        return writer;
    }

    internal static Utf8JsonWriter Number(this Utf8JsonWriter writer, string name, double? value)
    {
        if (value is { } number)
            writer.WriteNumber(name, number);
        return writer;
    }

    internal static Utf8JsonWriter Flag(this Utf8JsonWriter writer, string name, bool? value)
    {
        if (value is { } flag)
            writer.WriteBoolean(name, flag);
        return writer;
    }

    internal static Utf8JsonWriter Word<T>(this Utf8JsonWriter writer, string name, T? value)
        where T : struct, Enum =>
        writer.Text(name, value is { } word ? Words<T>.Standard.Of(word) : null);

    internal static Utf8JsonWriter Day(this Utf8JsonWriter writer, string name, DateOnly? value) =>
        writer.Text(name, value?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture));

    internal static Utf8JsonWriter Object<T>(
        this Utf8JsonWriter writer, string name, T? value, Action<Utf8JsonWriter, T> members)
        where T : class
    {
        if (value is null)
            return writer;
        writer.WriteStartObject(name);
        members(writer, value);
        writer.WriteEndObject();
        return writer;
    }

    internal static Utf8JsonWriter Objects<T>(
        this Utf8JsonWriter writer, string name, IReadOnlyList<T>? values, Action<Utf8JsonWriter, T> members)
    {
        if (values is null)
            return writer;
        writer.WriteStartArray(name);
        foreach (var value in values)
        {
            writer.WriteStartObject();
            members(writer, value);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
        return writer;
    }
}
