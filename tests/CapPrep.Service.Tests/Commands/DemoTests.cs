using CapPrep.Service.Commands;
using CapPrep.TestKit.Service;
using Shouldly;
using Xunit;

namespace CapPrep.Service.Tests.Commands;

/// <summary>The demo as a newcomer starts it: what it prints and what it leaves.</summary>
public sealed class DemoTests : IDisposable
{
    private const int Columns = 100;

    private readonly string _folder = Directory.CreateTempSubdirectory("capprep-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task Five_designs_get_their_answers_by_both_doors_and_every_signature_is_verified()
    {
        var (code, output) = await Demo("--once");

        var table = output.Split('\n').Select(line => string.Join(' ', line.Split(' ', StringSplitOptions.RemoveEmptyEntries))).ToArray();
        foreach (var door in new[] { "http", "folder" })
        {
            Got("Right", door, "sewAsReceived");
            Got("Bottom line last", door, "sewResequenced");
            Got("Too tall", door, "returnToOrderDesk");
            Got("Crowded", door, "returnToDigitizer");
        }

        table.ShouldContain("Broken http refused tape-invalid - - - none owed");
        table.ShouldContain("Broken folder refused tape-invalid - - - received, signature verified");
        output.ShouldContain("The design is 69.7 mm tall; this cap takes 63.5 mm there.");
        output.ShouldContain("All 10 answers are as expected, every webhook's signature is verified.");
        code.ShouldBe(ExitCode.Success);

        void Got(string design, string door, string verdict) => table.ShouldContain(line =>
            line.StartsWith($"{design} {door} {verdict} ", StringComparison.Ordinal)
            && line.EndsWith("received, signature verified", StringComparison.Ordinal));
    }

    [Fact]
    public async Task What_it_prints_fits_a_plain_terminal_and_holds_no_log()
    {
        var (_, output) = await Demo("--once");

        output.Split('\n').Where(line => line.Length > Columns && !line.Contains(_folder, StringComparison.Ordinal)).ShouldBeEmpty();
        output.ShouldNotContain('\u001b');
        output.ShouldNotContain("\"@t\"");
        Directory.GetFiles(_folder, "service.log", SearchOption.AllDirectories).Length.ShouldBe(1);
    }

    [Fact]
    public async Task Cards_and_proofs_lie_where_it_was_told()
    {
        await Demo("--once", "--out", "papers");

        var right = Path.Combine(_folder, "papers", "right-http");
        Directory.GetFiles(right).Select(Path.GetFileName).ShouldBe(["card.pdf", "card.png", "proof.png", "proof.svg"], ignoreOrder: true);
        (await File.ReadAllBytesAsync(Path.Combine(right, "card.pdf"), TestContext.Current.CancellationToken)).AsSpan(0, 5).SequenceEqual("%PDF-"u8).ShouldBeTrue();
        Directory.Exists(Path.Combine(_folder, "papers", "broken-http")).ShouldBeFalse();
    }

    [Fact]
    public async Task It_takes_no_settings_of_the_service()
    {
        var (code, output) = await Demo("--once", "--urls", "http://127.0.0.1:5080");

        code.ShouldBe(ExitCode.WrongCommandLine);
        output.ShouldContain("demo takes --once and --out FOLDER");
    }

    [Fact]
    public async Task Without_once_it_stays_up_says_how_to_ask_it_and_ends_well_when_it_is_stopped()
    {
        using var run = ProgramRun.Start(_folder, Own(), "demo");
        for (var tries = 0; tries < 2400 && !run.Output.Contains("Ctrl+C", StringComparison.Ordinal); tries++)
            await Task.Delay(50, TestContext.Current.CancellationToken);

        run.HasExited.ShouldBeFalse();
        var key = run.Output.Split('\n').Single(line => line.StartsWith("KEY=", StringComparison.Ordinal))["KEY=".Length..].Trim();
        var address = run.Output.Split('\n').Single(line => line.StartsWith("curl", StringComparison.Ordinal)).Split(' ')[2];
        using var client = new HttpClient();
        client.DefaultRequestHeaders.Authorization = new("Bearer", key);
        (await client.GetStringAsync(address, TestContext.Current.CancellationToken)).ShouldContain("QH-101");

        using var interrupt = System.Diagnostics.Process.Start("kill", ["-TERM", run.ProcessId.ToString(System.Globalization.CultureInfo.InvariantCulture)]);
        (await run.Exit(TimeSpan.FromSeconds(60))).ShouldBe(ExitCode.Success);
        run.Output.ShouldNotContain("Our fault");
    }

    private async Task<(int Code, string Output)> Demo(params string[] args)
    {
        using var run = ProgramRun.Start(_folder, Own(), ["demo", .. args]);
        var code = await run.Exit(TimeSpan.FromSeconds(120));
        return (code, run.Output);
    }

    // Its temporary folder lies inside this test's, and is deleted with it.
    private Dictionary<string, string> Own() => new() { ["TMPDIR"] = _folder };
}
