using CapPrep.Drawing;
using CapPrep.Drawing.Cards;
using CapPrep.Drawing.Output;
using CapPrep.Drawing.Proofs;
using CapPrep.Drawing.Sheets;
using CapPrep.Engine;
using CapPrep.Service.Jobs;
using CapPrep.Service.Plumbing;
using CapPrep.Service.Storage;
using CapPrep.Service.Storage.Rows;

namespace CapPrep.Service.Results;

/// <summary>
/// Puts a preparation on paper. PDF of the card and SVG of the proof are drawn at once, for a hot folder the
/// proof's PNG too; everything else is drawn from the stored sheets when somebody asks.
/// </summary>
internal sealed class PaperMaker : IPaperMaker
{
    public Papers Make(PreparedJob prepared)
    {
        var preparation = prepared.Preparation;
        var facts = Facts(prepared);
        var card = CardSheet.Lay(facts, preparation);
        var proof = ProofSheet.Lay(facts, preparation);
        var (cardFile, proofFile) = (SheetFile.Write(card), SheetFile.Write(proof));
        var result = ResultWriter.Write(preparation, Frame(prepared, cardFile, proofFile));
        var papers = new List<JobPaper>
        {
            new(DocumentKinds.Result, Json.ContentType, result),
            new(DocumentKinds.CardSheet, Formats.Sheet, cardFile),
            new(DocumentKinds.ProofSheet, Formats.Sheet, proofFile),
            new(DocumentKinds.CardPdf, Formats.Pdf.ContentType, SheetToPdf.Draw(card)),
            new(DocumentKinds.ProofSvg, Formats.Svg.ContentType, SheetToSvg.Draw(proof)),
        };
        if (prepared.Job.Door == Door.Folder)
            papers.Add(new JobPaper(DocumentKinds.ProofPng, Formats.Png.ContentType, Formats.Png.Draw(proof)));
        if (preparation.TapeToSew is { } tape)
            papers.Add(new JobPaper(DocumentKinds.TapeSew, Formats.Tape, tape.Bytes));
        if (preparation.ProposedTape is { } proposed)
            papers.Add(new JobPaper(DocumentKinds.TapeProposed, Formats.Tape, proposed));
        return new Papers(papers, ResultWriter.Outcome(preparation));
    }

    private static ResultFrame Frame(PreparedJob prepared, byte[] cardFile, byte[] proofFile)
    {
        var job = prepared.Job;
        return new ResultFrame(
            new ResultJob(job.Id, job.Number, job.Revision, job.Received), job.Inputs, job.Echo, prepared.TapeBytes, job.TapeSha)
        {
            TapeName = job.TapeName,
            CardSheetSha = DocumentStore.Sha(cardFile),
            ProofSheetSha = DocumentStore.Sha(proofFile),
        };
    }

    private static JobFacts Facts(PreparedJob prepared) => new()
    {
        Number = (int)prepared.Job.Number,
        Revision = prepared.Job.Revision,
        TapeName = prepared.Job.TapeName,
        TapeSha8 = Sha8(prepared.Preparation),
        FileName = prepared.Job.FileName ?? "",
        Received = prepared.Job.Received,
        QrPrefix = JobInputs.Read(prepared.Job.Inputs).QrPrefix,
        Paper = prepared.Shop.Paper,
        Units = prepared.Shop.Units,
        Language = prepared.Preparation.Setup.Station.Language ?? prepared.Shop.Language,
    };

    private static string? Sha8(Preparation preparation) => preparation.TapeToSew is { } tape
        ? DocumentStore.Sha(tape.Bytes)[..8].ToUpperInvariant()
        : null;
}
