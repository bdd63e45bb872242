using System.Net;
using CapPrep.Service.Plumbing;
using CapPrep.Service.Webhooks;
using Microsoft.Extensions.Configuration;
using Shouldly;
using Xunit;

namespace CapPrep.Service.Tests.Webhooks;

public sealed class AddressGuardTests
{
    /// <summary>
    /// Rows from the IANA special-purpose address registries (RFC 6890 and updates), both ends of each range; the
    /// cloud platform's agent address from memory.
    /// </summary>
    public static readonly TheoryData<string> Special =
    [
        "0.0.0.0", "0.255.255.255", "10.0.0.0", "10.255.255.255", "100.64.0.0", "100.100.100.200", "100.127.255.255",
        "127.0.0.1", "127.255.255.255", "168.63.129.16", "169.254.0.1", "169.254.169.254", "172.16.0.0", "172.31.255.255",
        "192.0.0.0", "192.0.0.170", "192.0.2.1", "192.88.99.1", "192.168.0.0", "192.168.255.255", "198.18.0.0",
        "198.19.255.255", "198.51.100.7", "203.0.113.7", "224.0.0.1", "239.255.255.255", "240.0.0.1", "255.255.255.255",
        "::", "::1", "::ffff:0:0", "::ffff:127.0.0.1", "::ffff:10.0.0.1", "::ffff:169.254.169.254", "::ffff:a9fe:a9fe",
        "::127.0.0.1", "::7f00:1", "64:ff9b::7f00:1", "64:ff9b::a9fe:a9fe", "64:ff9b::808:808", "64:ff9b:1::1", "64:ff9b:1:ffff::1", "100::1",
        "2001::1", "2001:0:7f00:1::", "2001:2::1", "2001:10::1", "2001:20::1", "2001:1ff:ffff::1", "2001:db8::1", "2001:db8:ffff::1",
        "2002:7f00:1::1", "2002:a9fe:a9fe::1", "2002:808:808::1", "3fff::1", "3fff:fff:ffff::1", "5f00::1", "5f00:ffff::1",
        "fc00::1", "fd00:ec2::254", "fdff:ffff::1", "fe80::1", "fe80::1%1", "febf::1", "fec0::1", "feff::1", "ff02::1", "ff0e::1",
    ];

    public static readonly TheoryData<string> Public =
    [
        "1.1.1.1", "8.8.8.8", "9.255.255.255", "11.0.0.0", "100.63.255.255", "100.128.0.0", "126.255.255.255", "128.0.0.1",
        "168.63.129.15", "168.63.129.17", "169.253.255.255", "169.255.0.0", "172.15.255.255", "172.32.0.0", "192.0.1.0",
        "191.255.255.255", "192.0.3.0", "192.88.98.255", "192.88.100.0", "198.51.99.255", "198.51.101.0", "203.0.112.255", "203.0.114.0",
        "192.167.255.255", "192.169.0.0", "198.17.255.255", "198.20.0.0", "223.255.255.255", "::ffff:8.8.8.8",
        "2001:200::1", "2001:4860:4860::8888", "2606:4700:4700::1111", "2000::1", "2001:db7::1", "2001:db9::1", "2003::1", "2a00::1", "3ffe::1", "3fff:1000::1",
    ];

    [Theory]
    [MemberData(nameof(Special))]
    public void A_special_address_is_not_called(string address) =>
        Guard().Admits(IPAddress.Parse(address), 443, encrypted: true).ShouldBeFalse();

    [Theory]
    [MemberData(nameof(Public))]
    public void A_public_address_is_called_by_https_only(string address)
    {
        Guard().Admits(IPAddress.Parse(address), 443, encrypted: true).ShouldBeTrue();
        Guard().Admits(IPAddress.Parse(address), 80, encrypted: false).ShouldBeFalse();
    }

    [Theory]
    [InlineData("https://0x7f.1/")]
    [InlineData("https://017700000001/")]
    [InlineData("https://2130706433/")]
    [InlineData("https://127.1/")]
    [InlineData("https://10.1/")]
    [InlineData("https://0/")]
    [InlineData("https://192.168.257/")]
    [InlineData("https://2852039166/")]
    [InlineData("https://0251.0376.0251.0376/")]
    [InlineData("https://127.0.0.1./")]
    [InlineData("https://10.0.0.1.:8443/hook")]
    [InlineData("https://127。0。0。1/")]
    [InlineData("https://[0:0:0:0:0:0:0:1]:8443/")]
    [InlineData("https://[fe80::1%25eth0]/")]
    [InlineData("https://[64:ff9b::a00:1]/")]
    [InlineData("https://[::ffff:7f00:1]/")]
    [InlineData("https://[fe80::1]/")]
    [InlineData("https://169.254.169.254/latest")]
    [InlineData("http://8.8.8.8/")]
    [InlineData("http://erp.shop.example/")]
    public void An_address_in_a_url_is_judged_whatever_way_it_is_written(string url) =>
        Guard().Judge(new Uri(url)).ShouldNotBeNull();

    [Theory]
    [InlineData("https://erp.shop.example/hook")]
    [InlineData("https://erp.shop.example./hook")]
    [InlineData("https://127.0.0.1.shop.example/")]
    [InlineData("https://8.8.8.8:8443/hook")]
    [InlineData("https://[2606:4700:4700::1111]/hook")]
    public void A_public_url_passes(string url) => Guard().Judge(new Uri(url)).ShouldBeNull();

    [Fact]
    public void The_operators_networks_are_called_also_by_http()
    {
        var guard = Guard("10.1.0.0/16,192.168.5.20:8443,fd00:1::/32");

        guard.Admits(IPAddress.Parse("10.1.2.3"), 80, encrypted: false).ShouldBeTrue();
        guard.Admits(IPAddress.Parse("::ffff:10.1.2.3"), 80, encrypted: false).ShouldBeTrue();
        guard.Admits(IPAddress.Parse("10.2.0.1"), 443, encrypted: true).ShouldBeFalse();
        guard.Admits(IPAddress.Parse("192.168.5.20"), 8443, encrypted: true).ShouldBeTrue();
        guard.Admits(IPAddress.Parse("192.168.5.20"), 443, encrypted: true).ShouldBeFalse();
        guard.Admits(IPAddress.Parse("fd00:1::5"), 443, encrypted: true).ShouldBeTrue();
        guard.Judge(new Uri("http://10.1.2.3/hook")).ShouldBeNull();
        guard.Judge(new Uri("http://erp.lan/hook")).ShouldBeNull();
    }

    [Fact]
    public void One_forbidden_answer_forbids_all()
    {
        IPAddress[] answers = [IPAddress.Parse("8.8.8.8"), IPAddress.Parse("127.0.0.1")];

        Guard().Choose(answers, 443, encrypted: true).ShouldBeEmpty();
        Guard().Choose(answers[..1], 443, encrypted: true).ShouldBe(answers[..1]);
    }

    [Fact]
    public void A_mapped_answer_is_called_as_what_it_is() =>
        Guard().Choose([IPAddress.Parse("::ffff:8.8.8.8")], 443, encrypted: true).ShouldBe([IPAddress.Parse("8.8.8.8")]);

    private static AddressGuard Guard(string allowed = "")
    {
        var configuration = new ConfigurationBuilder()
            .AddInMemoryCollection(new Dictionary<string, string?> { ["CapPrep:Webhooks:AllowedNetworks"] = allowed })
            .Build();
        return new AddressGuard(SettingsReader.Read(configuration).Settings!);
    }
}
