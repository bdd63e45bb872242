using System.Text.Json;
using CapPrep.Engine.Trade;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Trade;

public sealed class SourcesTests
{
    private static readonly StarterCatalog Catalog = Embedded.StarterCatalog;

    public static TheoryData<string> Resources => [.. Bodies.Select(body => body.Id)];

    private static IEnumerable<(string Id, ReadOnlyMemory<byte> Bytes)> Bodies =>
    [
        .. Catalog.CapStyles.Select(style => (style.Id, style.Bytes)),
        .. Catalog.CapFrames.Select(frame => (frame.Id, frame.Bytes)),
        .. Catalog.Machines.Select(machine => (machine.Id, machine.Bytes)),
        .. Catalog.FramingStations.Select(station => (station.Id, station.Bytes)),
    ];

    /// <summary>Counted by a walk of its own, not by the reader's.</summary>
    [Theory]
    [MemberData(nameof(Resources))]
    public void Every_number_of_the_starter_catalog_has_a_source(string id)
    {
        using var document = JsonDocument.Parse(Bodies.Single(body => body.Id == id).Bytes);
        var sources = document.RootElement.GetProperty("sources").EnumerateObject().Select(source => source.Name).ToArray();
        var numbers = Numbers(document.RootElement, "").ToArray();

        numbers.ShouldNotBeEmpty();
        numbers.ShouldAllBe(number => sources.Any(source => number == source || number.StartsWith(source + "/")));
    }

    [Fact]
    public void Every_fact_row_is_named_by_a_rule_or_a_resource_and_every_row_named_exists()
    {
        var named = Bodies
            .SelectMany(body => SourcesOf(body.Bytes))
            .SelectMany(source => source.Split(' ', ',', ':', ';').TakeWhile(word => word.Length is 2 or 3 && char.IsUpper(word[0]) && char.IsDigit(word[^1])))
            .Concat(Embedded.HouseBook.Rows.SelectMany(row => row.Sources))
            .Distinct()
            .Order(StringComparer.Ordinal);

        named.ShouldBe(Embedded.PublishedSources.Rows.Select(row => row.Row).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Published_rows_name_who_published_them_and_the_others_name_nobody()
    {
        foreach (var row in Embedded.PublishedSources.Rows)
        {
            (row.Title is not null && row.Publisher is not null && row.Url is not null).ShouldBe(row.IsPublished, row.Row);
            (Embedded.PublishedSources.FirstPublished([row.Row]) is not null).ShouldBe(row.IsPublished, row.Row);
        }
    }

    [Fact]
    public void The_first_published_row_is_the_one_a_limit_names() =>
        Embedded.PublishedSources.FirstPublished(["F22", "F23"])
            .ShouldBe(new("F23", "Hesitant to take on embroidery on caps?", "Printwear & Promotion", null));

    private static IEnumerable<string> SourcesOf(ReadOnlyMemory<byte> body)
    {
        using var document = JsonDocument.Parse(body);
        return [.. document.RootElement.GetProperty("sources").EnumerateObject().Select(source => source.Value.GetString()!)];
    }

    private static IEnumerable<string> Numbers(JsonElement element, string pointer) => element.ValueKind switch
    {
        JsonValueKind.Number => [pointer],
        JsonValueKind.Array => element.EnumerateArray().SelectMany((item, index) => Numbers(item, $"{pointer}/{index}")),
        JsonValueKind.Object => element.EnumerateObject().SelectMany(member => Numbers(member.Value, $"{pointer}/{member.Name}")),
        _ => [],
    };
}
