using System.Net;
using System.Text;
using CapPrep.Service.Commands.Demo;
using CapPrep.Service.Webhooks;
using Shouldly;
using Xunit;

namespace CapPrep.Service.Tests.Commands;

/// <summary>What the demo's receiver believes, since its code is what an integrator is shown.</summary>
public sealed class DemoReceiverTests
{
    private const string Body = """{"type":"job.finished","data":{"id":"job_1"}}""";

    private static readonly string Secret = Signer.NewSecret();

    [Fact]
    public async Task A_call_signed_with_the_secret_now_is_believed() =>
        (await Judge([Secret], TimeSpan.Zero)).ShouldBe((HttpStatusCode.NoContent, CallState.Verified));

    [Fact]
    public async Task After_a_change_of_secret_the_second_signature_counts_too() =>
        (await Judge([Signer.NewSecret(), Secret], TimeSpan.Zero)).ShouldBe((HttpStatusCode.NoContent, CallState.Verified));

    [Fact]
    public async Task A_call_signed_with_another_secret_is_not_believed() =>
        (await Judge([Signer.NewSecret()], TimeSpan.Zero)).ShouldBe((HttpStatusCode.Unauthorized, CallState.Forged));

    [Theory]
    [InlineData(-6)]
    [InlineData(6)]
    public async Task A_call_signed_minutes_ago_or_ahead_is_not_believed(int minutes) =>
        (await Judge([Secret], TimeSpan.FromMinutes(minutes))).ShouldBe((HttpStatusCode.Unauthorized, CallState.Forged));

    [Fact]
    public async Task A_changed_body_is_not_believed() =>
        (await Judge([Secret], TimeSpan.Zero, Body.Replace("finished", "failed", StringComparison.Ordinal)))
            .ShouldBe((HttpStatusCode.Unauthorized, CallState.Forged));

    private static async Task<(HttpStatusCode Status, CallState State)> Judge(string[] secrets, TimeSpan apart, string sent = Body)
    {
        await using var receiver = await DemoReceiver.Start();
        receiver.Trust(Secret);
        var at = TimeProvider.System.GetUtcNow() + apart;
        using var client = new HttpClient();
        using var call = new HttpRequestMessage(HttpMethod.Post, receiver.Address) { Content = new StringContent(sent) };
        call.Headers.Add("webhook-id", "evt_1");
        call.Headers.Add("webhook-timestamp", at.ToUnixTimeSeconds().ToString(System.Globalization.CultureInfo.InvariantCulture));
        call.Headers.Add("webhook-signature", Signer.Sign(secrets, "evt_1", at, Encoding.UTF8.GetBytes(Body)));
        using var reply = await client.SendAsync(call, TestContext.Current.CancellationToken);

        var order = new DemoOrder("Right", DemoDoor.Http, "right-http", [], "{}", "sewAsReceived");
        var told = await receiver.Await([new DemoAnswer(order, "sewAsReceived", "") { CallOwed = "job_1" }], TestContext.Current.CancellationToken);
        return (reply.StatusCode, told[0].Webhook);
    }
}
