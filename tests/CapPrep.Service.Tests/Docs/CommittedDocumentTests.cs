using CapPrep.Service.Commands;
using CapPrep.TestKit;
using CapPrep.TestKit.Documents;
using CapPrep.TestKit.Service;
using Shouldly;
using Xunit;

namespace CapPrep.Service.Tests.Docs;

public sealed class CommittedDocumentTests
{
    private static readonly string Committed = Path.Combine(Repository.Root, "openapi", "capprep-v1.json");

    [Fact]
    public async Task The_committed_document_is_the_one_that_the_routes_make()
    {
        var cancel = TestContext.Current.CancellationToken;
        if (Environment.GetEnvironmentVariable("CAPPREP_ACCEPT") == "1")
        {
            Environment.GetEnvironmentVariable("CI").ShouldNotBe("true", "what was reviewed is never refreshed in CI");
            await File.WriteAllBytesAsync(Committed, Composition.Document, cancel);
        }

        (await File.ReadAllTextAsync(Committed, cancel)).ShouldBe(
            System.Text.Encoding.UTF8.GetString(Composition.Document),
            "refresh it with: capprep openapi --out openapi/capprep-v1.json");
    }

    [Fact]
    public async Task The_service_serves_the_same_bytes()
    {
        await using var service = await ServiceUnderTest.Start();

        var served = await service.ClientWith(null).GetByteArrayAsync("/openapi/v1.json", TestContext.Current.CancellationToken);

        served.ShouldBe(Composition.Document);
    }

    [Fact]
    public async Task The_command_writes_the_same_bytes_and_needs_no_data_folder()
    {
        var folder = Directory.CreateTempSubdirectory("capprep-").FullName;
        try
        {
            var (code, output) = await ProgramRun.Run(folder, "openapi", "--out", "document.json");

            code.ShouldBe(ExitCode.Success, output);
            (await File.ReadAllBytesAsync(Path.Combine(folder, "document.json"), TestContext.Current.CancellationToken)).ShouldBe(Composition.Document);
            Directory.EnumerateFileSystemEntries(folder).Count().ShouldBe(1);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }
}
