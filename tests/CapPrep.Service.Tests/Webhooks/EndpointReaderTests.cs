using System.Text;
using CapPrep.Service.Storage.Rows;
using CapPrep.Service.Webhooks;
using Shouldly;
using Xunit;

namespace CapPrep.Service.Tests.Webhooks;

public sealed class EndpointReaderTests
{
    [Fact]
    public void A_type_with_half_of_a_surrogate_pair_is_refused()
    {
        var reading = EndpointReader.Read(Encoding.UTF8.GetBytes("""{"url":"https://erp.shop.example/caps","types":["\ud800"]}"""));

        reading.Violations.ShouldHaveSingleItem().Pointer.ShouldBe("/types/0");
    }

    [Fact]
    public void A_change_with_a_byte_order_mark_is_read()
    {
        var row = new EndpointRow
        {
            Shop = "main",
            Id = "whk_1",
            Url = "https://erp.shop.example/caps",
            Types = "job.finished",
            State = EndpointState.On,
            Secrets = [],
            Created = DateTimeOffset.UnixEpoch,
        };

        var reading = EndpointReader.ReadPatch(Encoding.UTF8.GetBytes("\uFEFF{\"note\":\"harbor\"}"), row);

        reading.Value!.Note.ShouldBe("harbor");
    }
}
