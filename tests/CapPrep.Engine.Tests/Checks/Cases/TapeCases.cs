using CapPrep.TestKit.Tapes;

namespace CapPrep.Engine.Tests.Checks.Cases;

internal static class TapeCases
{
    internal static readonly IReadOnlyDictionary<string, Job> All = new Dictionary<string, Job>
    {
        ["tape.cut-off_pass"] = Raw(Whole),
        ["tape.cut-off_fail"] = Raw([.. Whole[..^16], .. Whole[^4..]]),
        ["tape.header-counts_pass"] = Raw(Whole),
        ["tape.header-counts_fail"] = Raw(Whole.WithHeader("ST", "7")),
        ["tape.header-extents_pass"] = Raw(Whole),
        ["tape.header-extents_fail"] = Raw(Whole.WithHeader("+X", "7")),
        ["tape.header-colors_pass"] = Raw(Whole),
        ["tape.header-colors_fail"] = Raw(Whole.WithHeader("CO", "3")),
        ["tape.no-end_pass"] = Raw(Whole),
        ["tape.no-end_fail"] = Raw(Whole.WithoutEnd()),
        ["tape.part-record_pass"] = Raw(Whole),
        ["tape.part-record_fail"] = Raw(Whole.WithoutEnd().Then(0)),
        ["tape.after-end_pass"] = Raw(Whole),
        ["tape.after-end_fail"] = Raw(Whole.Then(1, 2, 3)),
        ["tape.empty-block_pass"] = Raw(Whole),
        ["tape.empty-block_fail"] = Raw(RawTape.Of(
            RawTape.Header(8, stops: 2, right: 6), [.. Rights(3), RawTape.Stop, RawTape.Stop, .. Rights(3)])),
        ["tape.repeated-points_pass"] = Raw(Whole),
        ["tape.repeated-points_fail"] = Raw(RawTape.Of(
            RawTape.Header(5, right: 3), [.. Rights(3), RawTape.Left1, RawTape.Left1])),
        ["tape.zero-stitches_pass"] = Raw(Whole),
        ["tape.zero-stitches_fail"] = Raw(RawTape.Of(RawTape.Header(4, right: 3), [.. Rights(3), RawTape.Stitch0])),
        ["tape.unknown-bits_pass"] = Raw(Whole),
        ["tape.unknown-bits_fail"] = Raw(RawTape.Of(
            RawTape.Header(201, right: 200), [.. Rights(200), RawTape.Unknown])),
        ["tape.trims-unclear_pass"] = Raw(Whole),
        ["tape.trims-unclear_fail"] = Raw(RawTape.Of(
            RawTape.Header(7, right: 87), [.. Rights(3), RawTape.JumpRight81, .. Rights(3)])),
    };

    private static byte[] Whole => RawTape.Of(RawTape.Header(300, right: 300), Rights(300));

    private static Job Raw(byte[] file) => Job.Clean with { Tape = Stitched.Read(file) };

    private static IEnumerable<byte[]> Rights(int count) => Enumerable.Repeat(RawTape.Right1, count);
}
