using System.Net;
using System.Net.Sockets;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using System.Text;
using System.Text.Json;
using CapPrep.Service.Plumbing;
using CapPrep.Service.Webhooks;
using CapPrep.TestKit.Service;
using Microsoft.Extensions.Configuration;
using Shouldly;
using WireMock.RequestBuilders;
using WireMock.ResponseBuilders;
using WireMock.Server;
using Xunit;

namespace CapPrep.Service.Tests.Webhooks;

public sealed class AttemptTests
{
    private static readonly string Secret = Signer.NewSecret();

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task An_answer_that_comes_too_late_is_cut_off()
    {
        await using var receiver = await Receiver.Start();
        receiver.Usually = new Reply { Delay = TimeSpan.FromMinutes(5) };

        var report = await Make(receiver.Address, timeoutSeconds: 1);

        (report.Outcome, report.Status, report.Excerpt).ShouldBe((Outcome.Timeout, null, null));
        report.Address.ShouldBe($"127.0.0.1:{receiver.Port}");
    }

    [Fact]
    public async Task A_body_that_drips_is_cut_off_and_the_status_counts()
    {
        await using var receiver = await Receiver.Start();
        receiver.Usually = new Reply { Status = 200, Drip = TimeSpan.FromMilliseconds(100) };

        var report = await Make(receiver.Address, timeoutSeconds: 1);

        (report.Outcome, report.Status).ShouldBe((Outcome.Delivered, HttpStatusCode.OK));
        report.Excerpt.ShouldNotBeNull().Length.ShouldBeInRange(1, 100);
    }

    [Theory]
    [InlineData(200, Outcome.Delivered)]
    [InlineData(500, Outcome.Refused)]
    public async Task A_body_without_end_is_read_for_2_KiB(int status, object outcome)
    {
        await using var receiver = await Receiver.Start();
        receiver.Usually = new Reply { Status = status, Endless = true };

        var report = await Make(receiver.Address);

        report.Outcome.ShouldBe((Outcome)outcome);
        report.Excerpt.ShouldBe(new string('x', 2048));
    }

    [Fact]
    public async Task A_broken_connection_is_a_failure_and_is_not_tried_again_at_once()
    {
        await using var receiver = await Receiver.Start();
        receiver.Usually = new Reply { Reset = true };

        var report = await Make(receiver.Address);

        report.Outcome.ShouldBe(Outcome.Unreachable);
        receiver.Calls.Count.ShouldBe(1);
    }

    [Fact]
    public async Task A_port_where_nobody_listens_is_unreachable()
    {
        var report = await Make(new Uri($"http://127.0.0.1:{FreePort()}/"));

        (report.Outcome, report.Address).ShouldBe((Outcome.Unreachable, null));
        Phases(report).ShouldNotContain("connect");
    }

    [Fact]
    public async Task A_name_that_does_not_exist_is_unreachable() =>
        (await Make(new Uri("https://no-such-host.invalid/"))).Outcome.ShouldBe(Outcome.Unreachable);

    [Fact]
    public async Task A_name_that_leads_inside_is_not_called()
    {
        await using var receiver = await Receiver.Start();

        var report = await Make(new Uri($"https://localhost:{receiver.Port}/"), allowed: "");

        report.Outcome.ShouldBe(Outcome.AddressNotAllowed);
        receiver.Calls.ShouldBeEmpty();
    }

    [Fact]
    public async Task Plain_http_stays_inside_the_allowed_networks()
    {
        await using var receiver = await Receiver.Start();

        (await Make(receiver.Address, allowed: "10.0.0.0/8")).Outcome.ShouldBe(Outcome.AddressNotAllowed);
        receiver.Calls.ShouldBeEmpty();
    }

    [Fact]
    public async Task A_certificate_that_nobody_vouches_for_is_a_failure()
    {
        using var certificate = Certificate();
        await using var receiver = await Receiver.Start(certificate);

        (await Make(receiver.Address)).Outcome.ShouldBe(Outcome.Tls);
        receiver.Calls.ShouldBeEmpty();
    }

    [Fact]
    public async Task A_certificate_for_another_name_is_a_failure()
    {
        using var certificate = Certificate("127.0.0.9");
        await using var receiver = await Receiver.Start(certificate);

        (await Make(receiver.Address, trust: new ReceiverTrust([certificate]))).Outcome.ShouldBe(Outcome.Tls);
        receiver.Calls.ShouldBeEmpty();
    }

    [Fact]
    public async Task An_encrypted_call_tells_its_phases_and_version()
    {
        using var certificate = Certificate();
        await using var receiver = await Receiver.Start(certificate);

        var report = await Make(receiver.Address, trust: new ReceiverTrust([certificate]));

        (report.Outcome, report.Tls).ShouldBe((Outcome.Delivered, "1.3"));
        Phases(report).ShouldBe(["dns", "connect", "tls", "firstByte", "total"]);
    }

    [Fact]
    public async Task A_head_without_end_is_too_long()
    {
        await using var receiver = await Receiver.Start();
        receiver.Usually = new Reply { Headers = new Dictionary<string, string> { ["x-long"] = new('x', 30_000) } };

        (await Make(receiver.Address)).Outcome.ShouldBe(Outcome.TooLong);
    }

    [Fact]
    public async Task Cookies_and_redirects_of_one_answer_change_nothing_in_the_next_call()
    {
        using var server = WireMockServer.Start();
        server.Given(Request.Create().WithPath("/hook").UsingPost()).RespondWith(Response.Create()
            .WithStatusCode(302).WithHeader("Location", $"{server.Url}/elsewhere").WithHeader("Set-Cookie", "session=1"));
        server.Given(Request.Create().WithPath("/elsewhere")).RespondWith(Response.Create().WithStatusCode(200));

        (await Make(new Uri($"{server.Url}/hook"))).Outcome.ShouldBe(Outcome.Redirect);
        (await Make(new Uri($"{server.Url}/hook"))).Outcome.ShouldBe(Outcome.Redirect);

        server.LogEntries.ShouldAllBe(entry => entry.RequestMessage!.Path == "/hook" && !entry.RequestMessage.Headers!.ContainsKey("Cookie"));
    }

    [Theory]
    [InlineData(200, Outcome.Delivered)]
    [InlineData(202, Outcome.Delivered)]
    [InlineData(299, Outcome.Delivered)]
    [InlineData(300, Outcome.Redirect)]
    [InlineData(304, Outcome.Redirect)]
    [InlineData(400, Outcome.Refused)]
    [InlineData(410, Outcome.Refused)]
    [InlineData(429, Outcome.Refused)]
    [InlineData(502, Outcome.Refused)]
    public async Task Each_status_has_its_outcome(int status, object outcome)
    {
        using var server = WireMockServer.Start();
        server.Given(Request.Create().UsingPost()).RespondWith(Response.Create().WithStatusCode(status).WithBody("said"));

        var report = await Make(new Uri($"{server.Url}/hook"));

        (report.Outcome, (int?)report.Status).ShouldBe(((Outcome)outcome, status));
    }

    [Theory]
    [InlineData(FaultType.EMPTY_RESPONSE)]
    [InlineData(FaultType.MALFORMED_RESPONSE_CHUNK)]
    public async Task A_garbled_answer_is_one_attempt_and_no_fault_of_ours(FaultType fault)
    {
        using var server = WireMockServer.Start();
        server.Given(Request.Create().UsingPost()).RespondWith(Response.Create().WithFault(fault));

        var report = await Make(new Uri($"{server.Url}/hook"));

        report.Outcome.ShouldBeOneOf(Outcome.Delivered, Outcome.Unreachable);
        report.Status.HasValue.ShouldBe(report.Outcome == Outcome.Delivered);
        server.LogEntries.Count.ShouldBe(1);
    }

    [Theory]
    [InlineData("120", 120)]
    [InlineData("Wed, 25 Nov 2026 08:10:00 GMT", 600)]
    [InlineData("soon", null)]
    public async Task A_wish_for_a_wait_is_read_as_seconds_or_as_a_time(string header, int? seconds)
    {
        using var server = WireMockServer.Start();
        server.Given(Request.Create().UsingPost()).RespondWith(Response.Create().WithStatusCode(429).WithHeader("Retry-After", header));

        var report = await Make(new Uri($"{server.Url}/hook"));

        report.RetryAfter.ShouldBe(seconds is null ? null : TimeSpan.FromSeconds(seconds.Value));
    }

    [Fact]
    public async Task A_wish_for_a_wait_with_another_status_is_not_heard()
    {
        using var server = WireMockServer.Start();
        server.Given(Request.Create().UsingPost()).RespondWith(Response.Create().WithStatusCode(500).WithHeader("Retry-After", "120"));

        (await Make(new Uri($"{server.Url}/hook"))).RetryAfter.ShouldBeNull();
    }

    [Fact]
    public async Task Bytes_that_are_no_text_are_kept_as_text()
    {
        using var server = WireMockServer.Start();
        server.Given(Request.Create().UsingPost()).RespondWith(Response.Create().WithStatusCode(500).WithBody([0x6F, 0x00, 0xFF, 0x6B]));

        (await Make(new Uri($"{server.Url}/hook"))).Excerpt.ShouldBe("o\uFFFD\uFFFDk");
    }

    private static async Task<AttemptReport> Make(
        Uri url, string allowed = "127.0.0.0/8", int timeoutSeconds = 20, ReceiverTrust? trust = null)
    {
        var configuration = new ConfigurationBuilder().AddInMemoryCollection(new Dictionary<string, string?>
        {
            ["CapPrep:Webhooks:AllowedNetworks"] = allowed,
            ["CapPrep:Webhooks:TimeoutSeconds"] = timeoutSeconds.ToString(),
        }).Build();
        var settings = SettingsReader.Read(configuration).Settings!;
        var clock = new Microsoft.Extensions.Time.Testing.FakeTimeProvider(new DateTimeOffset(2026, 11, 25, 8, 0, 0, TimeSpan.Zero));
        var attempt = new Attempt(new Door(new AddressGuard(settings), trust ?? new ReceiverTrust(null)), settings, clock);
        return await attempt.Make(new Call(url, "evt_1", Encoding.UTF8.GetBytes("{}"), [Secret], null), Cancel);
    }

    private static string[] Phases(AttemptReport report) =>
        [.. JsonDocument.Parse(report.Phases).RootElement.EnumerateObject().Select(phase => phase.Name)];

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }

    private static X509Certificate2 Certificate(string address = "127.0.0.1")
    {
        using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        var request = new CertificateRequest($"CN={address}", key, HashAlgorithmName.SHA256);
        var names = new SubjectAlternativeNameBuilder();
        names.AddIpAddress(IPAddress.Parse(address));
        request.CertificateExtensions.Add(names.Build());
        request.CertificateExtensions.Add(new X509BasicConstraintsExtension(true, false, 0, true));
        var now = DateTimeOffset.UtcNow;
        using var made = request.CreateSelfSigned(now.AddDays(-1), now.AddDays(1));
        return X509CertificateLoader.LoadPkcs12(made.Export(X509ContentType.Pkcs12), null);
    }
}
