using CapPrep.Engine.Reading;
using CapPrep.Engine.Tapes;
using CapPrep.Service.Jobs;
using CapPrep.Service.Storage;
using CapPrep.Service.Storage.Rows;

namespace CapPrep.Service.Decisions;

/// <summary>A finished job with what a decision on it is made of.</summary>
/// <param name="SewnTape">Bytes of the tape to sew; null: there is none (any more).</param>
internal sealed record DecidedJob(JobRow Row, StoredResult Result, byte[]? SewnTape) : IDisposable
{
    public Binding Binding => Binding.Of(Row);

    public bool IsSewn => Row.Verdict!.StartsWith("sew", StringComparison.Ordinal);

    /// <summary>The tape to sew has another order than the received one.</summary>
    public bool IsResequenced => Row.Verdict == Words<Engine.Verdict>.Standard.Of(Engine.Verdict.SewResequenced);

    public string? SewnStitchesSha => SewnTape is null
        ? null
        : StitchesHash.Of(TapeReader.Read(SewnTape, new TapeReading { MaxRecords = int.MaxValue }).Value!);

    public void Dispose() => Result.Dispose();
}
