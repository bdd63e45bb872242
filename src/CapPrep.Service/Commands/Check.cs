using CapPrep.Drawing;
using CapPrep.Drawing.Cards;
using CapPrep.Drawing.Output;
using CapPrep.Drawing.Proofs;
using CapPrep.Drawing.Sheets;
using CapPrep.Engine;
using CapPrep.Engine.Reading;
using CapPrep.Engine.Tapes;
using CapPrep.Engine.Tickets;
using CapPrep.Service.Results;
using CapPrep.Service.Storage;

namespace CapPrep.Service.Commands;

/// <summary>
/// Prepares one tape without the service: the same engine, the same drawings, no database. There is no job number, so
/// the tape's label is the input's name and the file is <c>sew.dst</c>.
/// </summary>
internal static class Check
{
    private const string SewTape = "sew.dst";
    private const int LabelLength = 16;

    public static async Task<int> Run(string[] args)
    {
        var options = Options.Parse(args, "out", "catalog");
        if (options.Words is not [var tapePath, var ticketPath])
            throw new WrongCommandLineException("check takes a tape and a ticket.");
        var folder = options.Require("out");
        var catalog = options.Find("catalog") is { } own ? CheckCatalog.Read(own) : CheckCatalog.Starter();

        var tapeBytes = ReadFile(tapePath);
        var ticket = TicketReader.Read(ReadFile(ticketPath));
        var tape = TapeReader.Read(tapeBytes, new TapeReading());
        var faults = new List<Violation>([.. ticket.Violations, .. tape.Violations]);
        var (resolved, setup) = ticket.Succeeded ? catalog.Resolve(ticket.Value, Path.GetFileName(tapePath), faults) : (null, null);
        if (faults.Count > 0)
            return Refuse(faults);

        var preparation = CapPrepper.Prepare(new PrepareRequest
        {
            Tape = tape.Value!,
            Ticket = resolved!,
            Setup = setup!,
            Label = Label(tapePath),
        });
        await WriteOrSay(folder, () => Write(folder, preparation, tapePath, tapeBytes));
        Console.WriteLine(preparation.Summary.Lead);
        return ExitCode.Of(preparation.Verdict);
    }

    private static byte[] ReadFile(string path)
    {
        try
        {
            return File.ReadAllBytes(path);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            throw new WrongCommandLineException($"{path} cannot be read.");
        }
    }

    private static async Task WriteOrSay(string folder, Func<Task> write)
    {
        try
        {
            await write();
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            throw new WrongCommandLineException($"{folder} cannot be written to: {fault.Message}");
        }
    }

    private static string Label(string tapePath)
    {
        var name = new string([.. Path.GetFileNameWithoutExtension(tapePath).Where(char.IsAscii)]);
        return name.Length > LabelLength ? name[..LabelLength] : name;
    }

    private static async Task Write(string folder, Preparation preparation, string tapePath, byte[] tapeBytes)
    {
        Directory.CreateDirectory(folder);
        var facts = Facts(preparation, tapePath);
        var (card, proof) = (CardSheet.Lay(facts, preparation), ProofSheet.Lay(facts, preparation));
        var frame = new ResultFrame(null, null, preparation.Ticket.Received.Echo?.ToArray(), tapeBytes.Length, DocumentStore.Sha(tapeBytes))
        {
            TapeName = SewTape,
            CardSheetSha = DocumentStore.Sha(SheetFile.Write(card)),
            ProofSheetSha = DocumentStore.Sha(SheetFile.Write(proof)),
        };
        await File.WriteAllBytesAsync(Path.Combine(folder, "result.json"), ResultWriter.Write(preparation, frame));
        await File.WriteAllBytesAsync(Path.Combine(folder, "proof.svg"), SheetToSvg.Draw(proof));
        await File.WriteAllBytesAsync(Path.Combine(folder, "card.pdf"), SheetToPdf.Draw(card));
        var sew = Path.Combine(folder, SewTape);
        File.Delete(sew);
        if (preparation.TapeToSew is { } tape)
            await File.WriteAllBytesAsync(sew, tape.Bytes);
    }

    /// <summary>The time is the file's own, so that the same file gives the same bytes.</summary>
    private static JobFacts Facts(Preparation preparation, string tapePath) => new()
    {
        Number = null,
        TapeName = SewTape,
        TapeSha8 = preparation.TapeToSew is { } tape ? DocumentStore.Sha(tape.Bytes)[..8].ToUpperInvariant() : null,
        FileName = Path.GetFileName(tapePath),
        Received = File.GetLastWriteTimeUtc(tapePath),
    };

    private static int Refuse(IReadOnlyList<Violation> faults)
    {
        foreach (var fault in faults)
        {
            var place = fault.Pointer ?? (fault.ByteOffset is { } offset ? $"byte {offset}" : "");
            Console.Error.WriteLine($"{fault.Part} {place}: {fault.Message}".TrimEnd());
            if (fault.Allowed.Count > 0)
                Console.Error.WriteLine($"  allowed: {string.Join(", ", fault.Allowed)}");
        }

        return ExitCode.Refused;
    }
}
