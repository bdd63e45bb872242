using CapPrep.Engine;
using CapPrep.Engine.Trade;
using CapPrep.Service.Storage.Rows;

namespace CapPrep.Service.Jobs;

/// <summary>A job with what the engine found, ready to be put on paper.</summary>
/// <param name="TapeBytes">Length of the received file.</param>
/// <param name="Shop">How the shop prints, as it stood when the job was received.</param>
internal sealed record PreparedJob(JobRow Job, Preparation Preparation, int TapeBytes, Shop Shop);

/// <summary>A document to be stored with a job.</summary>
/// <param name="Kind">A word of <c>DocumentKinds</c>.</param>
internal sealed record JobPaper(string Kind, string ContentType, byte[] Bytes);

/// <summary>What a finished job leaves.</summary>
/// <param name="Outcome">JSON object of the members that the job itself shows of its result.</param>
internal sealed record Papers(IReadOnlyList<JobPaper> Documents, byte[] Outcome);

/// <summary>Puts a preparation on paper; implemented by the slice that gives the documents out again.</summary>
internal interface IPaperMaker
{
    Papers Make(PreparedJob prepared);
}
