using System.Globalization;
using CapPrep.Engine.Reading;
using CapPrep.Service.Plumbing;

namespace CapPrep.Service.HotFolder;

/// <summary>Why a drop is returned before anybody has looked into tape and ticket.</summary>
internal static class DropRefusals
{
    public const string TicketMissing = "ticket-missing";
    public const string TapeMissing = "tape-missing";
    public const string NotPlainFile = "not-a-plain-file";
    public const string ArchiveInvalid = "archive-invalid";
    public const string TwinNames = "twin-names";

    private const string TapePart = "tape";
    private const string TicketPart = "ticket";
    private const string BodyPart = "body";

    /// <summary>The patience with half a pair has ended.</summary>
    public static Refusal Half(FoundFile file, TimeSpan patience)
    {
        var name = SafeName.Shown(file.Stem);
        var waited = string.Create(CultureInfo.InvariantCulture, $"in {patience.TotalMinutes:0} min");
        return file.Kind switch
        {
            FileKind.Tape => One(TicketPart, TicketMissing, $"The tape came, but its ticket {name}.json did not {waited}."),
            FileKind.Ticket => One(TapePart, TapeMissing, $"The ticket came, but its tape {name}.dst did not {waited}."),
            _ => One(TapePart, TapeMissing, $"'{SafeName.Shown(file.Name)}' is no tape (.dst), no ticket (.json) and no archive with both (.zip)."),
        };
    }

    /// <summary>A half was taken away by somebody else while the drop was being taken.</summary>
    public static Refusal Gone(string fileName) => DropScan.KindOf(fileName) == FileKind.Ticket
        ? One(TicketPart, TicketMissing, $"The ticket {SafeName.Shown(fileName)} was taken away while the tape was being taken.")
        : One(TapePart, TapeMissing, $"The tape {SafeName.Shown(fileName)} was taken away while it was being taken.");

    /// <summary>Something of the same name is a link, a folder or a device; it stays where it is.</summary>
    public static Refusal NotPlain(FoundFile odd) => One(
        odd.Kind == FileKind.Ticket ? TicketPart : TapePart,
        NotPlainFile,
        $"'{SafeName.Shown(odd.Name)}' is a link, a folder or a device; only plain files are taken. It was left in drop.");

    /// <summary>Whoever put it there did not let the service read it.</summary>
    public static Refusal Unreadable(IReadOnlyList<string> files) => One(
        BodyPart,
        NotPlainFile,
        $"{string.Join(" and ", files.Select(SafeName.Shown))} may not be read by the account that CapPrep runs under. Let it read them.");

    /// <summary>More than one tape, ticket or archive go by one name.</summary>
    public static Refusal Twins(IReadOnlyList<FoundFile> files) => One(
        BodyPart,
        TwinNames,
        $"These go by one name, and which belongs to which cannot be told: {string.Join(", ", files.Select(file => SafeName.Shown(file.Name)))}.");

    public static Refusal Archive(string message) => One(BodyPart, ArchiveInvalid, message);

    public static Refusal TapeTooLarge(int most) => new(
        Problems.TapeTooLarge, string.Create(CultureInfo.InvariantCulture, $"The tape has more than the {most} bytes that are read."));

    public static Refusal TicketTooLarge(int most) => new(
        Problems.TicketTooLarge, string.Create(CultureInfo.InvariantCulture, $"The ticket has more than the {most} bytes that are read."));

    /// <summary>The drop was tried again and again and nobody's fault but ours was found.</summary>
    public static Refusal OurFault(string dropId) => new(Problems.OurFault, $"CapPrep could not take this drop; the log says more under {dropId}.");

    /// <summary>The job that was made of the drop failed.</summary>
    public static Refusal JobFailed(long number, string? message) => new(
        Problems.JobFailed, string.Create(CultureInfo.InvariantCulture, $"Job {number} failed. {message}").TrimEnd());

    /// <summary>Somebody erased the job before it was answered.</summary>
    public static Refusal JobErased() => new(Problems.NotFound, "The job of this drop was erased before its answer was written.");

    private static Refusal One(string part, string code, string message) =>
        new(Problems.DropInvalid, message) { Violations = [new Violation(part, code, message)] };
}
