using System.Globalization;
using System.Text;
using CapPrep.Drawing;
using CapPrep.Drawing.Cards;
using CapPrep.Drawing.Output;
using CapPrep.Drawing.Proofs;
using CapPrep.Drawing.Sheets;
using CapPrep.Engine.Tapes;
using CapPrep.Engine.Tickets;
using CapPrep.Service.Commands.Demo;
using CapPrep.Service.Results;
using CapPrep.Service.Storage;
using CapPrep.TestKit.Preparations;
using CapPrep.TestKit.Tapes;

namespace CapPrep.TestKit.Documents;

/// <summary>
/// SHA-256 of everything that is promised to have the same bytes on every platform, for fixed designs of our own: result
/// document, tape to sew, proposed tape, both sheets and the proof as SVG.
/// </summary>
public static class Digests
{
    private const int RandomDesigns = 12;
    private const string TapeName = "10427.dst";

    /// <summary>One line per design: its name and its digests.</summary>
    public static IReadOnlyList<string> Lines() => [.. Designs().Select(Line)];

    private static IEnumerable<Design> Designs() =>
    [
        new("demo-right", ClubDesigns.Right(), []),
        new("demo-bottom-line-last", ClubDesigns.BottomLineLast(), []),
        new("demo-too-tall", ClubDesigns.TooTall(), []),
        new("demo-crowded", ClubDesigns.Crowded(), []),
        new("demo-broken", ClubDesigns.Broken(), []),
        new("crest", TapeBuilder.Crest().ToBytes("CREST"), []),
        new("letters", TapeBuilder.Letters(5).ToBytes("LETTERS"), []),
        new("box", TapeBuilder.Seated(800, 450, blocks: 3).ToBytes("BOX"), []),
        .. Enumerable.Range(0, RandomDesigns).Select(Random),
    ];

    private static Design Random(int number)
    {
        var design = RandomDesign.Of(number);
        return new(string.Create(CultureInfo.InvariantCulture, $"random-{number}"), design.Draft.ToBytes("RANDOM"), design.Threads);
    }

    private static string Line(Design design)
    {
        var read = TapeReader.Read(design.Tape, new TapeReading());
        return read.Succeeded
            ? $"{design.Name} {Prepared(design)}"
            : $"{design.Name} refused {Sha(Encoding.UTF8.GetBytes(string.Join('\n', read.Violations)))}";
    }

    private static string Prepared(Design design)
    {
        var preparation = StarterShop.Prepare(design.Tape, StarterShop.Ticket(design.Threads));
        var facts = new JobFacts
        {
            Number = 10427,
            TapeName = TapeName,
            TapeSha8 = null,
            FileName = design.Name + ".dst",
            Received = new DateTimeOffset(2026, 3, 9, 8, 15, 0, TimeSpan.Zero),
        };
        var (card, proof) = (CardSheet.Lay(facts, preparation), ProofSheet.Lay(facts, preparation));
        var frame = new ResultFrame(null, null, null, design.Tape.Length, Sha(design.Tape))
        {
            TapeName = TapeName,
            CardSheetSha = Sha(SheetFile.Write(card)),
            ProofSheetSha = Sha(SheetFile.Write(proof)),
        };
        return $"result {Sha(ResultWriter.Write(preparation, frame))} sew {Sha(preparation.TapeToSew?.Bytes)} "
            + $"proposed {Sha(preparation.ProposedTape)} proof {Sha(SheetToSvg.Draw(proof))}";
    }

    private static string Sha(byte[]? bytes) => bytes is null ? "none" : DocumentStore.Sha(bytes);

    private sealed record Design(string Name, byte[] Tape, IReadOnlyList<TicketThread> Threads);
}
