using System.Diagnostics;
using System.Globalization;
using CapPrep.Engine;
using CapPrep.TestKit;
using CapPrep.TestKit.Documents;
using Shouldly;
using Xunit;

namespace CapPrep.Service.Tests.Results;

/// <summary>The same inputs give the same bytes, whoever asks, where and when.</summary>
public sealed class SameBytesTests
{
    private static readonly string[] Once = [.. Digests.Lines()];

    private static string Kept => Path.Combine(Repository.Root, "tests", "CapPrep.Service.Tests", "Results", "Digests", $"{EngineVersion.Current}.txt");

    /// <summary>A digest that changed means that <see cref="EngineVersion"/> must rise; then the file of the new version is accepted.</summary>
    [Fact]
    public void The_digests_are_those_kept_for_this_version_of_the_engine()
    {
        if (Environment.GetEnvironmentVariable("CAPPREP_ACCEPT") == "1" && Environment.GetEnvironmentVariable("CI") != "true")
        {
            Directory.CreateDirectory(Path.GetDirectoryName(Kept)!);
            File.WriteAllLines(Kept, Once);
        }

        File.ReadAllLines(Kept).ShouldBe(Once);
    }

    [Fact]
    public void A_second_run_in_one_process_gives_the_same() => Digests.Lines().ShouldBe(Once);

    /// <summary>The program knows no cultures of the system, so one is made: comma, other signs, other dates.</summary>
    [Fact]
    public void Another_culture_gives_the_same()
    {
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = Elsewhere();
            12.5.ToString(CultureInfo.CurrentCulture).ShouldBe("12,5");
            Digests.Lines().ShouldBe(Once);
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    private static CultureInfo Elsewhere()
    {
        var culture = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        culture.NumberFormat.NumberDecimalSeparator = ",";
        culture.NumberFormat.NumberGroupSeparator = ".";
        culture.NumberFormat.NegativeSign = "~";
        culture.DateTimeFormat.ShortDatePattern = "dd.MM.yyyy";
        culture.DateTimeFormat.TimeSeparator = "h";
        return culture;
    }

    [Theory]
    [InlineData("", "")]
    [InlineData("DOTNET_EnableAVX2", "0")]
    [InlineData("DOTNET_EnableHWIntrinsic", "0")]
    [InlineData("DOTNET_TieredCompilation", "0")]
    [InlineData("DOTNET_PROCESSOR_COUNT", "1")]
    [InlineData("DOTNET_PROCESSOR_COUNT", "2")]
    public async Task Another_process_gives_the_same(string setting, string value)
    {
        var program = Path.Combine(Path.GetDirectoryName(AppContext.BaseDirectory.TrimEnd('/'))!, "..", "CapPrep.Benchmarks", Path.GetFileName(AppContext.BaseDirectory.TrimEnd('/')), "CapPrep.Benchmarks.dll");
        var start = new ProcessStartInfo("dotnet", [Path.GetFullPath(program), "digests"]) { RedirectStandardOutput = true };
        if (setting.Length > 0)
            start.Environment[setting] = value;

        using var process = Process.Start(start)!;
        var lines = (await process.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken)).Split('\n', StringSplitOptions.RemoveEmptyEntries);

        lines.ShouldBe(Once);
    }
}
