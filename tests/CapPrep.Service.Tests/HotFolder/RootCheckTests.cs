using CapPrep.Service.HotFolder;
using CapPrep.Service.Plumbing;
using CapPrep.TestKit.Service;
using Microsoft.Extensions.Configuration;
using Shouldly;
using Xunit;

namespace CapPrep.Service.Tests.HotFolder;

public sealed class RootCheckTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("capprep-root-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task A_folder_that_is_there_is_made_ready_and_left_clean()
    {
        (await Faults(_folder)).ShouldBeEmpty();

        FolderBench.Names(_folder).ShouldBe(["answers", "drop", "kept", "returned", "taken"]);
        foreach (var inner in Directory.EnumerateDirectories(_folder))
            FolderBench.Names(inner).ShouldBeEmpty();
    }

    [Fact]
    public async Task A_folder_that_is_not_there_is_named_with_what_to_do()
    {
        var fault = (await Faults(Path.Combine(_folder, "nowhere"))).ShouldHaveSingleItem();

        fault.ShouldStartWith("CapPrep:HotFolders:0:Root is '");
        fault.ShouldContain("make the folder, or mount it");
    }

    [Fact]
    public async Task A_folder_in_which_nothing_can_be_renamed_is_named()
    {
        await File.WriteAllTextAsync(Path.Combine(_folder, "taken"), "in the way", FolderBench.Cancel);

        (await Faults(_folder)).ShouldHaveSingleItem().ShouldContain("plain folders of one file system");
    }

    [Fact]
    public async Task A_shop_that_is_none_is_named()
    {
        var fault = (await Faults(_folder, ("HotFolders:0:Shop", "harbor"))).ShouldHaveSingleItem();

        fault.ShouldStartWith("CapPrep:HotFolders:0:Shop is 'harbor'");
        fault.ShouldContain("key add --shop harbor");
    }

    [Fact]
    public async Task A_process_that_keeps_no_folder_does_not_look_at_any() =>
        (await Faults(Path.Combine(_folder, "nowhere"), ("Roles", "api,worker"))).ShouldBeEmpty();

    [Fact]
    public async Task The_program_ends_with_the_code_of_wrong_settings()
    {
        var (code, output) = await ProgramRun.Run(
            _folder, "serve", "--urls", "http://127.0.0.1:0", "--CapPrep:Http:ManagementUrl", "off", "--CapPrep:HotFolders:0:Root", Path.Combine(_folder, "nowhere"));

        code.ShouldBe(78);
        output.ShouldContain("CapPrep:HotFolders:0:Root");
    }

    private static async Task<IReadOnlyList<string>> Faults(string root, params (string Name, string Value)[] more)
    {
        await using var service = await ServiceUnderTest.Start(Intake.QuietService.Quiet(Store.Sqlite));
        var rows = more.Append(("HotFolders:0:Root", root)).Select(row => KeyValuePair.Create("CapPrep:" + row.Item1, (string?)row.Item2));
        var settings = SettingsReader.Read(new ConfigurationBuilder().AddInMemoryCollection(rows).Build()).Settings.ShouldNotBeNull();
        return await service.Look(db => RootCheck.Faults(db, settings, FolderBench.Cancel));
    }
}
