using System.Globalization;
using CapPrep.Drawing;
using CapPrep.Drawing.Cards;
using CapPrep.Drawing.Output;
using CapPrep.Drawing.Proofs;
using CapPrep.Drawing.Sheets;
using CapPrep.Service.Commands.Demo;
using CapPrep.Service.Results;
using CapPrep.Service.Storage;
using CapPrep.TestKit.Tapes;

namespace CapPrep.TestKit.Documents;

/// <summary>What a version of the engine makes of fixed designs, as SHA-256 digests, one line each.</summary>
public static class Digests
{
    private const int ChanceDesigns = 12;

    /// <summary>Name, digest of the result document, of both written tapes and of the pictures as sheets and SVG.</summary>
    public static IEnumerable<string> Lines() => Designs().Select(design => Line(design.Name, design.Tape));

    private static IEnumerable<(string Name, byte[] Tape)> Designs()
    {
        yield return ("right", ClubDesigns.Right());
        yield return ("bottom-line-last", ClubDesigns.BottomLineLast());
        yield return ("too-tall", ClubDesigns.TooTall());
        yield return ("crowded", ClubDesigns.Crowded());
        yield return ("crest", TapeBuilder.Crest().ToBytes("CREST"));
        for (var seed = 1; seed <= ChanceDesigns; seed++)
            yield return (string.Create(CultureInfo.InvariantCulture, $"chance-{seed}"), RandomDesign.Of((ulong)seed));
    }

    private static string Line(string name, byte[] tape)
    {
        var preparation = Prepared.Of(tape);
        var facts = new JobFacts
        {
            Number = 10427,
            TapeName = "10427.DST",
            TapeSha8 = null,
            FileName = name + ".dst",
            Received = new DateTimeOffset(2026, 11, 25, 8, 19, 4, TimeSpan.Zero),
        };
        var (card, proof) = (CardSheet.Lay(facts, preparation), ProofSheet.Lay(facts, preparation));
        var frame = new ResultFrame(null, null, null, tape.Length, DocumentStore.Sha(tape))
        {
            TapeName = "10427.DST",
            CardSheetSha = DocumentStore.Sha(SheetFile.Write(card)),
            ProofSheetSha = DocumentStore.Sha(SheetFile.Write(proof)),
        };
        return string.Join(' ', new[]
        {
            name,
            "result " + DocumentStore.Sha(ResultWriter.Write(preparation, frame)),
            "sew " + ShaOf(preparation.TapeToSew?.Bytes),
            "proposed " + ShaOf(preparation.ProposedTape),
            "proof " + DocumentStore.Sha(SheetToSvg.Draw(proof)),
        });
    }

    private static string ShaOf(byte[]? bytes) => bytes is null ? "none" : DocumentStore.Sha(bytes);
}
