using System.Diagnostics;
using System.Globalization;

namespace CapPrep.Service.Plumbing;

/// <summary>
/// Named points at which a test can kill the process as hard as a power cut would, by
/// <c>CAPPREP_FAIL_AT=name[:n]</c> (the n-th time the point is passed). Off, a point costs one look at a null field.
/// </summary>
internal static class Checkpoints
{
    public const string Migrating = "migrating";
    public const string AcceptedBeforeCommit = "accepted-before-commit";
    public const string Accepted = "accepted";
    public const string Claimed = "claimed";
    public const string Prepared = "prepared";
    public const string Drawn = "drawn";
    public const string ResultBeforeCommit = "result-before-commit";
    public const string ResultCommitted = "result-committed";
    public const string DeliveryClaimed = "delivery-claimed";
    public const string DeliverySent = "delivery-sent";
    public const string DeliveryRecorded = "delivery-recorded";
    public const string DropNoted = "drop-noted";
    public const string TapeTaken = "tape-taken";
    public const string TicketTaken = "ticket-taken";
    public const string AnswerWritten = "answer-written";
    public const string AnswerRenamed = "answer-renamed";
    public const string Kept = "kept";

    /// <summary>All names, in the order in which one job passes them; behind them those of a hot folder.</summary>
    public static readonly IReadOnlyList<string> All =
    [
        Migrating, AcceptedBeforeCommit, Accepted, Claimed, Prepared, Drawn, ResultBeforeCommit, ResultCommitted,
        DeliveryClaimed, DeliverySent, DeliveryRecorded,
        DropNoted, TapeTaken, TicketTaken, AnswerWritten, AnswerRenamed, Kept,
    ];

    private static readonly string? Armed;
    private static int _left;

    static Checkpoints()
    {
        var setting = Environment.GetEnvironmentVariable("CAPPREP_FAIL_AT");
        if (string.IsNullOrEmpty(setting))
            return;
        var parts = setting.Split(':');
        Armed = parts[0];
        _left = parts.Length > 1 ? int.Parse(parts[1], CultureInfo.InvariantCulture) : 1;
    }

    public static bool IsArmed(string name) => Armed == name;

    /// <summary>Passes a point; kills this process when the point is armed and its turn has come.</summary>
    public static void Pass(string name)
    {
        if (Armed is null)
            return;
        if (Armed == name && Interlocked.Decrement(ref _left) == 0)
            Process.GetCurrentProcess().Kill();
    }
}
