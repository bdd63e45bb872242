using CapPrep.Engine;
using CapPrep.TestKit;
using CapPrep.TestKit.Documents;
using CapPrep.TestKit.Service;
using Shouldly;
using Xunit;

namespace CapPrep.Service.Tests.Results;

/// <summary>Equal inputs give equal bytes: in every run, process, culture and kind of processor.</summary>
public sealed class SameBytesTests
{
    private const int Processes = 2;

    private static readonly IReadOnlyList<string> Here = Digests.Lines();

    private static readonly Dictionary<string, Surroundings> All = new()
    {
        ["another process"] = new(""),
        ["Turkish culture"] = new("tr-TR", ("DOTNET_SYSTEM_GLOBALIZATION_INVARIANT", "0")) { Writes = "tr-TR writes 1,5" },
        ["German culture"] = new("de-DE", ("DOTNET_SYSTEM_GLOBALIZATION_INVARIANT", "0")) { Writes = "de-DE writes 1,5" },
        ["no AVX2"] = new("", ("DOTNET_EnableAVX2", "0")),
        ["no vector instructions"] = new("", ("DOTNET_EnableHWIntrinsic", "0")),
        ["compiled once"] = new("", ("DOTNET_TieredCompilation", "0")),
        ["one processor"] = new("", ("DOTNET_PROCESSOR_COUNT", "1")),
        ["two processors"] = new("", ("DOTNET_PROCESSOR_COUNT", "2")),
    };

    private static readonly SemaphoreSlim Room = new(Processes);

    private static readonly Lazy<Dictionary<string, Task<string[]>>> Runs =
        new(() => All.ToDictionary(one => one.Key, one => Run(one.Value)));

    public static TheoryData<string> Names() => [.. All.Keys];

    /// <summary>
    /// Digests that changed mean that results change: raise <see cref="EngineVersion.Current"/>, look at what changed,
    /// and write the file of the new version with CAPPREP_ACCEPT=1.
    /// </summary>
    [Fact]
    public void The_digests_are_those_of_this_version_of_the_engine()
    {
        var kept = Path.Combine(Repository.Root, "tests", "CapPrep.Service.Tests", "Results", "Digests", $"{EngineVersion.Current}.txt");
        if (Environment.GetEnvironmentVariable("CAPPREP_ACCEPT") == "1")
        {
            Environment.GetEnvironmentVariable("CI").ShouldNotBe("true", "what was looked at is never refreshed in CI");
            File.WriteAllText(kept, string.Concat(Here.Select(line => line + "\n")));
        }

        File.Exists(kept).ShouldBeTrue($"{kept} is missing: a new version needs its own, written with CAPPREP_ACCEPT=1");
        Here.ShouldBe(File.ReadAllLines(kept), "a changed digest needs a higher EngineVersion");
    }

    [Fact]
    public void Two_runs_in_one_process_give_the_same() => Digests.Lines().ShouldBe(Here);

    [Fact]
    public void Every_design_has_digests_of_its_own() => Here.Distinct().Count().ShouldBe(Here.Count);

    [Theory]
    [MemberData(nameof(Names))]
    public async Task Everywhere_the_same_comes_out(string name)
    {
        var lines = await Runs.Value[name];

        lines[0].Trim().ShouldBe(All[name].Writes);
        lines.Skip(1).ShouldBe(Here);
    }

    private static async Task<string[]> Run(Surroundings surroundings)
    {
        await Room.WaitAsync();
        try
        {
            using var run = ProgramRun.StartBenchmarks(surroundings.Environment, ["digests", .. surroundings.Culture]);
            var code = await run.Exit(TimeSpan.FromSeconds(120));
            code.ShouldBe(0, run.Output);
            return run.Output.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        }
        finally
        {
            Room.Release();
        }
    }

    /// <summary>What differs from the process of the tests.</summary>
    private sealed record Surroundings(string Name, params (string Name, string Value)[] Settings)
    {
        public string[] Culture => Name.Length == 0 ? [] : [Name];

        /// <summary>How the process writes one and a half, so that a culture that is not there is noticed.</summary>
        public string Writes { get; init; } = "writes 1.5";

        public IReadOnlyDictionary<string, string> Environment => new Dictionary<string, string>(
            Settings.Select(setting => KeyValuePair.Create(setting.Name, setting.Value)).Prepend(KeyValuePair.Create("LC_ALL", "C")));
    }
}
