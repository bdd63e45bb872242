using CapPrep.Service.Plumbing;
using Microsoft.Extensions.Configuration;
using Shouldly;
using Xunit;

namespace CapPrep.Service.Tests.Plumbing;

public sealed class SettingsTests
{
    [Theory]
    [InlineData("Roles", "api,printer", "printer", "api, worker, folder")]
    [InlineData("Roles", ",", "", "at least one")]
    [InlineData("Roles", "0", "0", "api, worker, folder")]
    [InlineData("Database:Provider", "oracle", "oracle", "sqlite or postgres")]
    [InlineData("Database:ConnectionString", "Host=x", "(not shown)", "DataFolder")]
    [InlineData("Database:MigrateAtStart", "maybe", "maybe", "true or false")]
    [InlineData("Access:ManageKey", "cpk_wrong", "(not shown)", "key new")]
    [InlineData("Access:ManageKeyFile", "/nowhere/at/all", "/nowhere/at/all", "readable file")]
    [InlineData("Http:PublicUrl", "shop.example", "shop.example", "absolute http or https address")]
    [InlineData("Http:ManagementUrl", "5081", "5081", "or off")]
    [InlineData("Http:TrustedProxies", "10.0.0.0/99", "10.0.0.0/99", "10.1.0.0/16")]
    [InlineData("Http:MaxWaitSeconds", "61", "61", "0 to 60")]
    [InlineData("Http:MaxWaiting", "-1", "-1", "0 to 1000")]
    [InlineData("Http:RequestsPerMinute", "0", "0", "1 to 100000")]
    [InlineData("Uploads:MaxTapeBytes", "8388609", "8388609", "515 to 8388608")]
    [InlineData("Uploads:MaxRecords", "2000001", "2000001", "1 to 2000000")]
    [InlineData("Uploads:MaxTicketBytes", "262145", "262145", "256 to 262144")]
    [InlineData("Queue:MaxWaiting", "0", "0", "1 to 1000000")]
    [InlineData("Workers:Count", "65", "65", "0 to 64")]
    [InlineData("Workers:LeaseSeconds", "4", "4", "5 to 300")]
    [InlineData("Workers:MaxAttempts", "11", "11", "1 to 10")]
    [InlineData("Workers:JobTimeoutSeconds", "soon", "soon", "5 to 600")]
    [InlineData("HotFolders:0:Root", "drop", "drop", "an absolute path")]
    [InlineData("HotFolders:0:Root", "", "", "an absolute path")]
    [InlineData("HotFolders:0:QuietSeconds", "0", "0", "1 to 600")]
    [InlineData("HotFolders:0:ScanSeconds", "601", "601", "1 to 600")]
    [InlineData("HotFolders:0:PatienceMinutes", "0", "0", "1 to 1440")]
    [InlineData("HotFolders:0:KeepDays", "3651", "3651", "0 to 3650")]
    [InlineData("Webhooks:AllowedNetworks", "erp.shop.example", "erp.shop.example", "10.1.0.0/16")]
    [InlineData("Webhooks:Concurrency", "129", "129", "1 to 128")]
    [InlineData("Webhooks:PerEndpoint", "17", "17", "1 to 16")]
    [InlineData("Webhooks:TimeoutSeconds", "31", "31", "1 to 30")]
    [InlineData("Webhooks:WaitsSeconds", "0,86401", "86401", "0 to 86400")]
    [InlineData("Webhooks:SwitchOffAfterHours", "23", "23", "24 to 720")]
    [InlineData("Cards:QrPrefix", "0123456789012345678901234567890123456789012345678901234567890", "0123456789", "at most 60 characters")]
    [InlineData("Retention:JobDays", "0", "0", "1 to 3650")]
    [InlineData("Retention:PictureDays", "0", "0", "1 to 3650")]
    [InlineData("Retention:TapeDays", "0", "0", "1 to 3650")]
    [InlineData("Retention:EventDays", "6", "6", "7 to 3650")]
    [InlineData("Retention:AttemptDays", "0", "0", "1 to 3650")]
    public void A_wrong_setting_is_named_with_its_value_and_its_bounds(string name, string value, string shown, string bounds)
    {
        var reading = Read((name, value));

        reading.Settings.ShouldBeNull();
        var fault = reading.Faults.First(line => line.Contains("CapPrep:" + name, StringComparison.Ordinal));
        fault.ShouldContain($"'{shown}");
        fault.ShouldContain(bounds);
    }

    [Fact]
    public void All_wrong_settings_are_named_in_one_run()
    {
        var reading = Read(("Workers:Count", "99"), ("Retention:EventDays", "x"), ("Database:Provider", "files"));

        reading.Faults.Count.ShouldBe(3);
    }

    [Fact]
    public void A_setting_that_does_not_exist_is_refused()
    {
        var reading = Read(("Worker:Count", "2"));

        reading.Faults.ShouldBe(["CapPrep:Worker:Count is set, but there is no such setting."]);
    }

    [Theory]
    [InlineData("Database:ConnectionString")]
    [InlineData("Secrets:KeyFile")]
    public void PostgreSQL_needs_its_connection_and_its_key_file(string name)
    {
        var reading = Read(("Database:Provider", "postgres"));

        reading.Faults.ShouldContain(line => line.Contains(name, StringComparison.Ordinal));
    }

    [Fact]
    public void Without_any_setting_the_embedded_default_stands()
    {
        var settings = Read().Settings.ShouldNotBeNull();

        settings.Roles.ShouldBe([Role.Api, Role.Worker, Role.Folder]);
        settings.Database.Provider.ShouldBe(DatabaseProvider.Sqlite);
        settings.Webhooks.WaitsSeconds.Sum().ShouldBe((96 * 3600) + (36 * 60) + 5);
        settings.Workers.Count.ShouldBe(Environment.ProcessorCount);
        settings.Http.ManagementUrl!.Port.ShouldBe(5081);
    }

    [Theory]
    [InlineData("/srv/hot")]
    [InlineData("/srv/hot/")]
    [InlineData("/srv/hot/inner")]
    [InlineData("/srv")]
    public void Two_hot_folders_do_not_lie_in_one_another(string second)
    {
        var reading = Read(("HotFolders:0:Root", "/srv/hot"), ("HotFolders:1:Root", second));

        reading.Faults.ShouldHaveSingleItem().ShouldContain("a folder of its own");
    }

    [Fact]
    public void Hot_folders_stand_in_a_list_and_have_their_own_times()
    {
        var folders = Read(("HotFolders:0:Root", "/srv/hot"), ("HotFolders:1:Root", "/srv/hot-2"), ("HotFolders:1:Shop", "harbor"), ("HotFolders:1:KeepDays", "0"))
            .Settings.ShouldNotBeNull().HotFolders;

        folders.Select(folder => (folder.Root, folder.Shop, folder.QuietSeconds, folder.ScanSeconds, folder.PatienceMinutes, folder.KeepDays))
            .ShouldBe([("/srv/hot", "main", 2, 2, 10, 30), ("/srv/hot-2", "harbor", 2, 2, 10, 0)]);
    }

    [Fact]
    public void Waits_of_less_than_96_hours_are_a_warning_and_not_a_fault()
    {
        var reading = Read(("Webhooks:WaitsSeconds", "0,1,1"));

        reading.Settings.ShouldNotBeNull().Webhooks.WaitsSeconds.ShouldBe([0, 1, 1]);
        reading.Warnings.ShouldHaveSingleItem().ShouldContain("96 h");
    }

    [Fact]
    public void A_receiver_inside_the_shop_is_allowed_by_network_or_by_address_and_port()
    {
        var networks = Read(("Webhooks:AllowedNetworks", "10.1.0.0/16,192.168.5.20:8443")).Settings.ShouldNotBeNull().Webhooks.AllowedNetworks;

        networks.Any(network => network.Admits(System.Net.IPAddress.Parse("10.1.2.3"), 80)).ShouldBeTrue();
        networks.Any(network => network.Admits(System.Net.IPAddress.Parse("10.2.2.3"), 80)).ShouldBeFalse();
        networks.Any(network => network.Admits(System.Net.IPAddress.Parse("192.168.5.20"), 8443)).ShouldBeTrue();
        networks.Any(network => network.Admits(System.Net.IPAddress.Parse("192.168.5.20"), 443)).ShouldBeFalse();
    }

    [Fact]
    public void The_sample_of_a_shops_settings_is_read_without_a_fault_or_a_warning()
    {
        var sample = Path.Combine(CapPrep.TestKit.Repository.Root, "deploy", "appsettings.sample.json");

        var reading = SettingsReader.Read(new ConfigurationBuilder().AddJsonFile(sample).Build());

        reading.Faults.ShouldBeEmpty();
        reading.Warnings.ShouldBeEmpty();
        reading.Settings.ShouldNotBeNull().Webhooks.WaitsSeconds.ShouldBe(SettingsReader.StandardWaits);
    }

    private static SettingsReading Read(params (string Name, string Value)[] rows) =>
        SettingsReader.Read(new ConfigurationBuilder()
            .AddInMemoryCollection(rows.Select(row => KeyValuePair.Create("CapPrep:" + row.Name, (string?)row.Value)))
            .Build());
}
