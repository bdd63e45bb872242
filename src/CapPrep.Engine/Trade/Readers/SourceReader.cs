using CapPrep.Engine.Reading;

namespace CapPrep.Engine.Trade.Readers;

/// <summary>
/// Reads <c>sources</c>, JSON pointers to where a number comes from, and sees to it that every number of the body
/// has one, for itself or for something it is part of.
/// </summary>
internal static class SourceReader
{
    private static readonly string[] Origins = ["house", "measured", "supplier", "from memory"];

    internal static IReadOnlyDictionary<string, string> Sources(this ObjectReader reader, ReadOnlyMemory<byte> body)
    {
        var numbers = NumberWalk.Through(body);
        var sources = reader.Object("sources", inner => Read(inner, numbers));
        if (sources is null)
            return new SortedDictionary<string, string>();
        foreach (var number in numbers.Owners.Where(number => !IsCovered(number, sources)))
            reader.Faults.Add(number, ViolationCodes.Required, "This number has no source: a row of the fact table, house, measured, supplier or from memory.");
        return sources;
    }

    private static SortedDictionary<string, string>? Read(ObjectReader reader, NumberWalk numbers)
    {
        var sources = new SortedDictionary<string, string>(StringComparer.Ordinal);
        foreach (var pointer in reader.Names)
        {
            if (!numbers.Pointers.Contains(pointer))
                reader.Contradicts(pointer, "This points to nothing in the body.");
            if (reader.Text(pointer, 200) is not { } source)
                continue;
            sources[pointer] = source;
            CheckOrigin(reader, pointer, source);
        }

        return sources;
    }

    private static void CheckOrigin(ObjectReader reader, string pointer, string source)
    {
        if (Origins.Any(origin => BeginsWith(source, origin)))
            return;
        var rows = source.Split(' ', ',', ';', ':').TakeWhile(LooksLikeRow).ToArray();
        if (rows.Length > 0 && rows.All(row => Embedded.PublishedSources.Find(row) is not null))
            return;
        reader.Faults.NotAllowed(
            reader.PointerTo(pointer),
            ViolationCodes.UnknownId,
            "A source begins with rows of the fact table, house, measured, supplier or from memory.",
            [.. Embedded.PublishedSources.Rows.Select(row => row.Row), .. Origins]);
    }

    private static bool BeginsWith(string source, string origin) =>
        source.StartsWith(origin, StringComparison.Ordinal)
        && (source.Length == origin.Length || !char.IsLetterOrDigit(source[origin.Length]));

    private static bool LooksLikeRow(string word) =>
        word.Length is 2 or 3 && word[0] is >= 'A' and <= 'Z' && word.Skip(1).All(char.IsAsciiDigit);

    private static bool IsCovered(string number, SortedDictionary<string, string> sources)
    {
        for (var pointer = number; ; pointer = pointer[..pointer.LastIndexOf('/')])
        {
            if (sources.ContainsKey(pointer))
                return true;
            if (pointer.Length == 0)
                return false;
        }
    }
}
