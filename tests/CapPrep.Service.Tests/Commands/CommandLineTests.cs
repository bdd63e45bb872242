using System.Net;
using System.Net.Sockets;
using CapPrep.Service.Access;
using CapPrep.Service.Commands;
using CapPrep.Service.Tests.Intake;
using CapPrep.TestKit.Service;
using Shouldly;
using Xunit;

namespace CapPrep.Service.Tests.Commands;

/// <summary>Runs the built program, as a person at a shell or a unit file does.</summary>
public sealed class CommandLineTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("capprep-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task An_unknown_command_is_told_what_there_is()
    {
        var (code, output) = await ProgramRun.Run(_folder, "sow");

        code.ShouldBe(ExitCode.WrongCommandLine);
        output.ShouldContain("There is no command 'sow'.");
        output.ShouldContain("capprep check TAPE TICKET.json");
    }

    [Fact]
    public async Task Keys_of_a_folder_without_a_database_are_not_listed_as_none()
    {
        var (code, output) = await ProgramRun.Run(_folder, "key", "list");

        code.ShouldBe(ExitCode.WrongCommandLine);
        output.ShouldContain("There is no database in ");
        Directory.EnumerateFileSystemEntries(_folder).ShouldBeEmpty();
    }

    [Fact]
    public async Task An_address_in_use_is_a_setting_to_change_and_no_fault_of_ours()
    {
        using var other = new TcpListener(IPAddress.Loopback, 0);
        other.Start();

        var (code, output) = await ProgramRun.Run(
            _folder, "serve", "--urls", $"http://{other.LocalEndpoint}", "--CapPrep:Http:ManagementUrl", "off");

        code.ShouldBe(ExitCode.Settings);
        output.ShouldContain("address already in use. Another address is given with --urls");
    }

    [Fact]
    public async Task A_folder_that_cannot_be_written_to_is_named()
    {
        await File.WriteAllBytesAsync(Path.Combine(_folder, "crest.dst"), Upload.Tape, TestContext.Current.CancellationToken);
        await File.WriteAllTextAsync(Path.Combine(_folder, "ticket.json"), Upload.Ticket("QB-9"), TestContext.Current.CancellationToken);

        var (code, output) = await ProgramRun.Run(_folder, "check", "crest.dst", "ticket.json", "--out", "ticket.json");

        code.ShouldBe(ExitCode.WrongCommandLine);
        output.ShouldContain("ticket.json cannot be written to: ");
    }

    [Fact]
    public async Task An_unknown_option_is_named()
    {
        var (code, output) = await ProgramRun.Run(_folder, "key", "list", "--size", "3");

        code.ShouldBe(ExitCode.WrongCommandLine);
        output.ShouldContain("--size");
    }

    [Fact]
    public async Task Wrong_settings_end_the_start_with_their_names()
    {
        var (code, output) = await ProgramRun.Run(_folder, "serve", "--CapPrep:Workers:Count", "900");

        code.ShouldBe(ExitCode.Settings);
        output.ShouldContain("CapPrep:Workers:Count is '900'");
    }

    [Fact]
    public async Task A_new_key_is_well_formed_and_stores_nothing()
    {
        var (code, output) = await ProgramRun.Run(_folder, "key", "new");

        code.ShouldBe(ExitCode.Success);
        KeyForm.IsWellFormed(output.Trim()).ShouldBeTrue();
        Directory.EnumerateFileSystemEntries(_folder).ShouldBeEmpty();
    }

    [Fact]
    public async Task Keys_are_added_listed_and_ended_without_a_running_service()
    {
        (await ProgramRun.Run(_folder, "key", "add", "--shop", "quay", "--scopes", "read,submit", "--name", "erp")).Code.ShouldBe(ExitCode.Success);
        var listed = (await ProgramRun.Run(_folder, "key", "list")).Output;
        listed.ShouldContain("quay");
        var id = listed.Split(' ')[0];

        (await ProgramRun.Run(_folder, "key", "end", id)).Code.ShouldBe(ExitCode.Success);

        (await ProgramRun.Run(_folder, "key", "list")).Output.ShouldNotContain(id);
        (await ProgramRun.Run(_folder, "key", "end", id)).Code.ShouldBe(ExitCode.Refused);
    }

    [Fact]
    public async Task A_backup_of_the_live_database_can_be_opened()
    {
        await ProgramRun.Run(_folder, "key", "add", "--shop", "main", "--scopes", "read", "--name", "erp");

        var (code, _) = await ProgramRun.Run(_folder, "backup", "--out", "copy.db");

        code.ShouldBe(ExitCode.Success);
        using var copy = new Microsoft.Data.Sqlite.SqliteConnection($"Data Source={Path.Combine(_folder, "copy.db")};Mode=ReadOnly;Pooling=False");
        copy.Open();
        using var count = copy.CreateCommand();
        count.CommandText = "SELECT COUNT(*) FROM keys";
        count.ExecuteScalar().ShouldBe(1L);
        (await ProgramRun.Run(_folder, "backup", "--out", "copy.db")).Code.ShouldBe(ExitCode.WrongCommandLine);
    }

    [Fact]
    public async Task Health_of_a_service_that_does_not_run_is_not_well()
    {
        var (code, _) = await ProgramRun.Run(_folder, "health", "--urls", "http://127.0.0.1:9");

        code.ShouldBe(ExitCode.OurFault);
    }
}
