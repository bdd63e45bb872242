using System.Text.Json;
using CapPrep.Engine.Checks;
using CapPrep.Service.Plumbing;

namespace CapPrep.Service.Storage;

/// <summary>Everything a job's result depends on beside tape and ticket, pinned at acceptance.</summary>
internal sealed record JobInputs
{
    public required string TapeSha256 { get; init; }

    public required string EngineVersion { get; init; }

    /// <summary>Null when the ticket's article number is of no style.</summary>
    public VersionedId? CapStyle { get; init; }

    public required VersionedId CapFrame { get; init; }

    public required VersionedId Machine { get; init; }

    public required VersionedId FramingStation { get; init; }

    public required VersionedId RuleBook { get; init; }

    /// <summary>The built-in book below the shop's own; null when the job uses the built-in one itself.</summary>
    public VersionedId? BasedOn { get; init; }

    /// <summary>With no style: ids of the styles whose article numbers come nearest.</summary>
    public IReadOnlyList<string> StyleSuggestions { get; init; } = [];

    /// <summary>Cap styles that could be taken instead, should the design be too large.</summary>
    public IReadOnlyList<VersionedId> OtherStyles { get; init; } = [];

    /// <summary>The newest finished job of the same order, line and location, which the result is compared with; null: none.</summary>
    public string? Earlier { get; init; }

    /// <summary>Ids of the decisions that counted, newest last; the newest ones where there are very many.</summary>
    public IReadOnlyList<string> Decisions { get; init; } = [];

    /// <summary>Text in front of the card's code.</summary>
    public string QrPrefix { get; init; } = "";

    /// <summary>The version of the built-in book that this job is judged by.</summary>
    public int HouseVersion => (BasedOn ?? RuleBook).Version;

    /// <summary>As stored with the job and as the job shows them.</summary>
    public byte[] Bytes() => Json.Bytes(Write);

    /// <summary>Reads what <see cref="Bytes"/> wrote.</summary>
    public static JobInputs Read(ReadOnlyMemory<byte> utf8)
    {
        using var document = JsonDocument.Parse(utf8);
        var root = document.RootElement;
        return new JobInputs
        {
            TapeSha256 = root.GetProperty("tapeSha256").GetString()!,
            EngineVersion = root.GetProperty("engineVersion").GetString()!,
            CapStyle = Id(root, "capStyle"),
            CapFrame = Id(root, "capFrame")!,
            Machine = Id(root, "machine")!,
            FramingStation = Id(root, "framingStation")!,
            RuleBook = Id(root, "ruleBook")!,
            BasedOn = Id(root.GetProperty("ruleBook"), "basedOn"),
            StyleSuggestions = root.TryGetProperty("styleSuggestions", out var ids) ? [.. ids.EnumerateArray().Select(id => id.GetString()!)] : [],
            OtherStyles = root.TryGetProperty("otherStyles", out var others) ? [.. others.EnumerateArray().Select(Id)] : [],
            Earlier = root.TryGetProperty("earlier", out var earlier) ? earlier.GetString() : null,
            Decisions = root.TryGetProperty("decisions", out var decisions) ? [.. decisions.EnumerateArray().Select(id => id.GetString()!)] : [],
            QrPrefix = root.TryGetProperty("qrPrefix", out var prefix) ? prefix.GetString()! : "",
        };
    }

    private void Write(Utf8JsonWriter writer)
    {
        writer.WriteStartObject();
        writer.WriteString("tapeSha256", TapeSha256);
        writer.WriteString("engineVersion", EngineVersion);
        if (CapStyle is not null)
            Write(writer, "capStyle", CapStyle);
        Write(writer, "capFrame", CapFrame);
        Write(writer, "machine", Machine);
        Write(writer, "framingStation", FramingStation);
        Write(writer, "ruleBook", RuleBook, BasedOn);
        if (StyleSuggestions.Count > 0)
            Write(writer, "styleSuggestions", StyleSuggestions);
        if (OtherStyles.Count > 0)
            WriteOthers(writer);
        if (Earlier is not null)
            writer.WriteString("earlier", Earlier);
        if (Decisions.Count > 0)
            Write(writer, "decisions", Decisions);
        if (QrPrefix.Length > 0)
            writer.WriteString("qrPrefix", QrPrefix);
        writer.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter writer, string name, IReadOnlyList<string> ids)
    {
        writer.WriteStartArray(name);
        foreach (var id in ids)
            writer.WriteStringValue(id);
        writer.WriteEndArray();
    }

    private void WriteOthers(Utf8JsonWriter writer)
    {
        writer.WriteStartArray("otherStyles");
        foreach (var style in OtherStyles)
        {
            writer.WriteStartObject();
            writer.WriteString("id", style.Id);
            writer.WriteNumber("version", style.Version);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
    }

    private static void Write(Utf8JsonWriter writer, string name, VersionedId id, VersionedId? basedOn = null)
    {
        writer.WriteStartObject(name);
        writer.WriteString("id", id.Id);
        writer.WriteNumber("version", id.Version);
        if (basedOn is not null)
            Write(writer, "basedOn", basedOn);
        writer.WriteEndObject();
    }

    private static VersionedId? Id(JsonElement owner, string name) => owner.TryGetProperty(name, out var value) ? Id(value) : null;

    private static VersionedId Id(JsonElement value) =>
        new(value.GetProperty("id").GetString()!, value.GetProperty("version").GetInt32());
}
