using System.Text.Json.Nodes;
using System.Text.Json;
using CapPrep.Service.Jobs;
using CapPrep.Service.Plumbing;
using CapPrep.Service.Storage;
using CapPrep.Service.Storage.Rows;

namespace CapPrep.Service.HotFolder;

/// <summary>
/// Writes what a finished job leaves into a folder, answer.json last. The tape to sew is among it only where the
/// verdict lets it be sewn.
/// </summary>
internal sealed class AnswerFolder(DocumentStore documents, JobView view)
{
    private const string Answer = "answer.json";

    /// <summary>Whatever lies in the folder from before goes first.</summary>
    public async Task Write(string folder, DropRow drop, JobRow job, CancellationToken cancel)
    {
        if (Directory.Exists(folder))
            Directory.Delete(folder, recursive: true);
        Directory.CreateDirectory(folder);
        var files = new JsonArray();
        foreach (var (kind, name) in Wanted(job))
        {
            if (await documents.Find(job.Id, kind, cancel) is not { } document)
                continue;
            await DurableFile.Write(Path.Combine(folder, name), document.Bytes, cancel);
            files.Add(new JsonObject { ["name"] = name, ["sha256"] = document.Sha256 });
        }

        await DurableFile.Write(Path.Combine(folder, Answer), Body(await view.Whole(job, cancel), drop, job, files), cancel);
    }

    private static IEnumerable<(string Kind, string Name)> Wanted(JobRow job) =>
    [
        (DocumentKinds.Result, "result.json"),
        (DocumentKinds.CardPdf, "card.pdf"),
        (DocumentKinds.ProofSvg, "proof.svg"),
        (DocumentKinds.ProofPng, "proof.png"),
        (DocumentKinds.TapeSew, job.TapeName),
    ];

    /// <summary>The job as the API shows it, with what belongs to this drop.</summary>
    private static byte[] Body(byte[] job, DropRow drop, JobRow row, JsonArray files)
    {
        var body = JsonNode.Parse(job)!.AsObject();
        body["drop"] = new JsonObject { ["id"] = drop.Id, ["name"] = drop.Name };
        if (row.DropId != drop.Id)
            body["duplicateOf"] = row.DropId;
        body["files"] = files;
        return JsonSerializer.SerializeToUtf8Bytes(body, Json.Written);
    }
}
