using System.Text;
using CapPrep.Service.Webhooks;
using CapPrep.TestKit.Service;
using Microsoft.AspNetCore.Http;
using Shouldly;
using StandardWebhooks;
using Xunit;

namespace CapPrep.Service.Tests.Webhooks;

public sealed class SignerTests
{
    private static readonly byte[] Body = Encoding.UTF8.GetBytes("{\"type\":\"job.finished\",\"design\":\"Crest, größer\"}");

    /// <summary>Test cases 1 to 4, 6 and 7 of RFC 4231, section 4, for HMAC-SHA-256 (5 is of a cut output).</summary>
    public static readonly TheoryData<string, string, string> Rfc4231 = new()
    {
        { Repeated("0b", 20), Hex("Hi There"), "b0344c61d8db38535ca8afceaf0bf12b881dc200c9833da726e9376c2e32cff7" },
        { Hex("Jefe"), Hex("what do ya want for nothing?"), "5bdcc146bf60754e6a042426089575c75a003f089d2739839dec58b964ec3843" },
        { Repeated("aa", 20), Repeated("dd", 50), "773ea91e36800e46854db8ebd09181a72959098b3ef8c122d9635514ced565fe" },
        { "0102030405060708090a0b0c0d0e0f10111213141516171819", Repeated("cd", 50), "82558a389a443c0ea4cc819899f2083a85f0faa3e578f8077a2e3ff46729665b" },
        { Repeated("aa", 131), Hex("Test Using Larger Than Block-Size Key - Hash Key First"), "60e431591ee0b67f0d8a26aacbf5b77f8e0bc6213728c5140546040f0ee37f54" },
        {
            Repeated("aa", 131),
            Hex("This is a test using a larger than block-size key and a larger than block-size data. The key needs to be hashed before being used by the HMAC algorithm."),
            "9b09ffa71b942fcb27635fbcd5b0e944bfdc63644f0713938a7f51535c3a35e2"
        },
    };

    [Theory]
    [MemberData(nameof(Rfc4231))]
    public void The_code_is_that_of_RFC_4231(string key, string data, string wanted) =>
        Convert.ToHexStringLower(Signer.Mac(Convert.FromHexString(key), Convert.FromHexString(data))).ShouldBe(wanted);

    [Fact]
    public void The_public_package_for_Standard_Webhooks_verifies_a_signature()
    {
        var secret = Signer.NewSecret();
        var now = DateTimeOffset.UtcNow;
        var headers = new HeaderDictionary
        {
            ["webhook-id"] = "evt_1",
            ["webhook-timestamp"] = now.ToUnixTimeSeconds().ToString(),
            ["webhook-signature"] = Signer.Sign([secret], "evt_1", now, Body),
        };

        Should.NotThrow(() => new StandardWebhook(secret).Verify(Encoding.UTF8.GetString(Body), headers));
        Should.Throw<Exception>(() => new StandardWebhook(Signer.NewSecret()).Verify(Encoding.UTF8.GetString(Body), headers));
    }

    [Fact]
    public void The_public_package_makes_the_same_signature()
    {
        var secret = Signer.NewSecret();
        var at = DateTimeOffset.FromUnixTimeSeconds(1_795_594_744);

        Signer.Sign([secret], "evt_1", at, Body).ShouldBe(new StandardWebhook(secret).Sign("evt_1", at, Encoding.UTF8.GetString(Body)));
    }

    // Source: https://docs.svix.com/receiving/verifying-payloads/how-manual, by the authors of the specification.
    [Fact]
    public void A_published_example_comes_out() =>
        Signer.Sign(
                ["whsec_plJ3nmyCDGBKInavdOK15jsl"],
                "msg_loFOjxBNrRLzqYUf",
                DateTimeOffset.FromUnixTimeSeconds(1_731_705_121),
                """{"event_type":"ping","data":{"success":true}}"""u8)
            .ShouldBe("v1,rAvfW3dJ/X/qxhsaXPOyyCGmRKsaKWcsNccKXlIktD0=");

    [Fact]
    public void Each_live_secret_signs_with_a_blank_between()
    {
        string[] secrets = [Signer.NewSecret(), Signer.NewSecret()];
        var at = DateTimeOffset.UnixEpoch;
        var header = Signer.Sign(secrets, "evt_1", at, Body);

        header.Split(' ').Length.ShouldBe(2);
        var received = new ReceivedCall("evt_1", "0", header, new Dictionary<string, string>(), Body);
        secrets.ShouldAllBe(secret => received.IsSignedWith(secret));
    }

    [Fact]
    public void A_new_secret_has_32_random_bytes()
    {
        var secret = Signer.NewSecret();

        secret.ShouldStartWith("whsec_");
        Convert.FromBase64String(secret["whsec_".Length..]).Length.ShouldBe(32);
        Signer.NewSecret().ShouldNotBe(secret);
    }

    private static string Hex(string text) => Convert.ToHexStringLower(Encoding.ASCII.GetBytes(text));

    private static string Repeated(string hex, int times) => string.Concat(Enumerable.Repeat(hex, times));
}
