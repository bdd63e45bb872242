using System.Buffers.Text;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using CapPrep.Engine;
using CapPrep.Engine.Reading;
using CapPrep.Service.Calls;
using CapPrep.Service.Plumbing;
using CapPrep.Service.Storage.Rows;

namespace CapPrep.Service.Jobs;

/// <summary>What a list of jobs is asked for.</summary>
internal sealed record JobFilter
{
    private static readonly string[] Known =
    [
        "orderNumber", "line", "customer", "capStyle", "digitizer", "status", "verdict", "door", "latest",
        "receivedFrom", "receivedTo", "sort", "limit", "cursor",
    ];

    public string? OrderNumber { get; private init; }

    public string? Line { get; private init; }

    public string? Customer { get; private init; }

    public string? CapStyle { get; private init; }

    public string? Digitizer { get; private init; }

    public IReadOnlyList<JobStatus> Statuses { get; private init; } = [];

    public IReadOnlyList<string> Verdicts { get; private init; } = [];

    public Door? Door { get; private init; }

    public bool? Latest { get; private init; }

    /// <summary>Included.</summary>
    public DateTimeOffset? ReceivedFrom { get; private init; }

    /// <summary>Not included.</summary>
    public DateTimeOffset? ReceivedTo { get; private init; }

    /// <summary>Oldest change first; otherwise the newest job first.</summary>
    public bool ByChange { get; private init; }

    public int Limit { get; private init; }

    public JobCursor? After { get; private init; }

    /// <summary>Tells these filters from others, for the cursors.</summary>
    public required string Print { get; init; }

    /// <summary>Reads the query; the refusal holds every fault.</summary>
    public static (JobFilter? Filter, Refusal? Refusal) Read(IQueryCollection query)
    {
        var reader = new QueryReader(query, Known);
        var print = PrintOf(query);
        var filter = new JobFilter
        {
            Print = print,
            OrderNumber = reader.Text("orderNumber"),
            Line = reader.Text("line"),
            Customer = reader.Text("customer"),
            CapStyle = reader.Text("capStyle"),
            Digitizer = reader.Text("digitizer"),
            Statuses = [.. reader.Words("status", Words<JobStatus>.Standard.All).Select(Parsed<JobStatus>)],
            Verdicts = reader.Words("verdict", Words<Verdict>.Standard.All),
            Door = reader.Word("door", Words<Door>.Standard.All) is { } door ? Parsed<Door>(door) : null,
            Latest = reader.Flag("latest"),
            ReceivedFrom = reader.Time("receivedFrom"),
            ReceivedTo = reader.Time("receivedTo"),
            ByChange = reader.Word("sort", ["received", "changed"]) == "changed",
            Limit = reader.Limit(),
            After = Cursor(reader, print),
        };
        return reader.Refusal is { } refusal ? (null, refusal) : (filter, null);
    }

    public IQueryable<JobRow> Apply(IQueryable<JobRow> jobs)
    {
        if (OrderNumber is not null)
            jobs = jobs.Where(job => job.OrderNumber == OrderNumber);
        if (Line is not null)
            jobs = jobs.Where(job => job.Line == Line);
        if (Customer is not null)
            jobs = jobs.Where(job => job.Customer == Customer);
        if (CapStyle is not null)
            jobs = jobs.Where(job => job.CapStyle == CapStyle);
        if (Digitizer is not null)
            jobs = jobs.Where(job => job.Digitizer == Digitizer);
        if (Statuses.Count > 0)
            jobs = jobs.Where(job => Statuses.Contains(job.Status));
        if (Verdicts.Count > 0)
            jobs = jobs.Where(job => Verdicts.Contains(job.Verdict));
        if (Door is { } door)
            jobs = jobs.Where(job => job.Door == door);
        if (Latest is { } latest)
            jobs = jobs.Where(job => job.ReplacedBy == null == latest);
        if (ReceivedFrom is { } from)
            jobs = jobs.Where(job => job.Received >= from);
        if (ReceivedTo is { } to)
            jobs = jobs.Where(job => job.Received < to);
        return jobs;
    }

    private static JobCursor? Cursor(QueryReader reader, string print)
    {
        if (reader.Text("cursor") is not { } text)
            return null;
        var cursor = JobCursor.Read(text);
        if (cursor?.Print == print)
            return cursor;
        reader.Fault("cursor", ViolationCodes.Contradicts, "This cursor was not given for these filters.");
        return null;
    }

    private static T Parsed<T>(string word)
        where T : struct, Enum =>
        Words<T>.Standard.TryParse(word, out var value) ? value : throw new ArgumentOutOfRangeException(nameof(word), word, null);

    private static string PrintOf(IQueryCollection query)
    {
        var text = new StringBuilder();
        foreach (var (name, values) in query.Where(pair => pair.Key is not ("cursor" or "limit")).OrderBy(pair => pair.Key, StringComparer.Ordinal))
            text.Append(name).Append('=').AppendJoin('\u001f', values.Order(StringComparer.Ordinal)).Append('\u001e');
        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text.ToString())))[..8];
    }
}

/// <summary>Where a page ended: the print of its filters, and place and id of its last job.</summary>
/// <param name="Place">Position or number, as the list is sorted.</param>
internal sealed record JobCursor(string Print, long Place, string Id)
{
    public string Write() =>
        Base64Url.EncodeToString(Encoding.UTF8.GetBytes(string.Create(CultureInfo.InvariantCulture, $"{Print}.{Place}.{Id}")));

    /// <summary>Null: not a cursor of ours.</summary>
    public static JobCursor? Read(string text)
    {
        if (!Base64Url.IsValid(text))
            return null;
        var parts = Encoding.UTF8.GetString(Base64Url.DecodeFromChars(text)).Split('.');
        return parts is [var print, var place, var id] && long.TryParse(place, NumberStyles.None, CultureInfo.InvariantCulture, out var number)
            ? new JobCursor(print, number, id)
            : null;
    }
}
