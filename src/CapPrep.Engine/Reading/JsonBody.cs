using System.Buffers;
using System.Text;
using System.Text.Json;
using System.Text.Unicode;

namespace CapPrep.Engine.Reading;

/// <summary>Opens a JSON body as one object, or reports at which byte it stops being JSON.</summary>
public static class JsonBody
{
    /// <summary>Deepest nesting accepted anywhere.</summary>
    public const int MaxDepth = 32;

    private static readonly JsonDocumentOptions Options = new() { MaxDepth = MaxDepth };

    /// <summary>
    /// Reads the bytes, of any length, with <paramref name="read"/>; every fault found comes back, bad syntax
    /// included. A byte order mark is passed over (RFC 8259, section 8.1, allows it).
    /// </summary>
    public static ReadResult<T> Read<T>(ReadOnlyMemory<byte> utf8, Faults faults, Func<ObjectReader, T?> read)
        where T : class
    {
        using var document = Parse(utf8, faults);
        if (document is null)
            return ReadResult<T>.Refused(faults.Violations);

        var value = Read(document.RootElement, "", faults, read);
        return value is null || faults.Any
            ? ReadResult<T>.Refused(faults.Violations)
            : ReadResult<T>.Of(value);
    }

    /// <summary>Reads one element as an object; null when it is none, which is reported.</summary>
    public static T? Read<T>(JsonElement element, string pointer, Faults faults, Func<ObjectReader, T?> read)
        where T : class
    {
        if (element.ValueKind != JsonValueKind.Object)
        {
            faults.WrongType(pointer, "An object", ObjectReader.Describe(element));
            return null;
        }

        var reader = new ObjectReader(element, pointer, faults);
        var value = read(reader);
        reader.Close();
        return value;
    }

    /// <summary>The same bytes, without a byte order mark in front.</summary>
    public static ReadOnlyMemory<byte> WithoutMark(ReadOnlyMemory<byte> utf8) =>
        utf8.Span.StartsWith(ByteOrderMark) ? utf8[ByteOrderMark.Length..] : utf8;

    private static JsonDocument? Parse(ReadOnlyMemory<byte> utf8, Faults faults)
    {
        var mark = utf8.Length - WithoutMark(utf8).Length;
        if (!Utf8.IsValid(utf8.Span))
        {
            faults.At(FirstNoText(utf8.Span), ViolationCodes.BadFormat, "This is not UTF-8 from here on.");
            return null;
        }

        try
        {
            return JsonDocument.Parse(utf8[mark..], Options);
        }
        catch (JsonException fault)
        {
            var offset = mark + ByteOffset(utf8.Span[mark..], fault);
            faults.At(offset, ViolationCodes.BadFormat, $"This is not JSON from here on, or nested deeper than {MaxDepth} levels.");
            return null;
        }
    }

    private static ReadOnlySpan<byte> ByteOrderMark => [0xEF, 0xBB, 0xBF];

    private static int FirstNoText(ReadOnlySpan<byte> utf8)
    {
        var offset = 0;
        while (Rune.DecodeFromUtf8(utf8[offset..], out _, out var read) == OperationStatus.Done)
            offset += read;
        return offset;
    }

    private static long ByteOffset(ReadOnlySpan<byte> utf8, JsonException fault)
    {
        long offset = 0;
        for (long line = 0; line < (fault.LineNumber ?? 0); line++)
        {
            var end = utf8[(int)offset..].IndexOf((byte)'\n');
            if (end < 0)
                break;
            offset += end + 1;
        }

        return Math.Min(offset + (fault.BytePositionInLine ?? 0), utf8.Length);
    }
}
