using System.Globalization;
using CapPrep.Engine.Reading;
using CapPrep.Engine.Trade;
using CapPrep.Service.Storage;

namespace CapPrep.Service.Catalog;

/// <summary>Finds every fault of a body: those in itself, and those against what is stored already.</summary>
internal sealed class ResourceCheck(CatalogShelf shelf, ShopScope scope)
{
    private const int EveryStyle = 100_000;

    public async Task<IReadOnlyList<Violation>> Faults(ResourceKind kind, string id, byte[] body, CancellationToken cancel)
    {
        var reading = kind.Read(body);
        if (reading.Violations.Count > 0)
            return reading.Violations;
        var faults = new Faults("body", $"A {kind.Noun}");
        if (reading.Id is not null && reading.Id != id)
            faults.Add($"/{kind.IdMember}", ViolationCodes.Contradicts, $"The body says '{reading.Id}', the address '{id}'.");
        foreach (var mention in reading.Mentions)
            await Look(mention, faults, cancel);
        if (kind == ResourceKind.CapStyles)
            await LookForTakenSkus(id, body, faults, cancel);
        return faults.Violations;
    }

    private async Task Look(Mention mention, Faults faults, CancellationToken cancel)
    {
        var row = await shelf.Latest(scope.Required, mention.Kind, mention.Id, cancel);
        if (row is { Retired: false } || (row is not null && !mention.MustBeInUse))
            return;
        var noun = ResourceKind.At(mention.Kind).Noun;
        var allowed = await shelf.Ids(scope.Required, mention.Kind, cancel);
        if (row is null)
            faults.NotAllowed(mention.Pointer, ViolationCodes.UnknownId, $"There is no {noun} '{mention.Id}'.", allowed);
        else
            faults.NotAllowed(mention.Pointer, ViolationCodes.RetiredId, $"The {noun} '{mention.Id}' is retired.", allowed);
    }

    /// <summary>An article number leads to one style, so no two styles in use may carry the same.</summary>
    private async Task LookForTakenSkus(string id, byte[] body, Faults faults, CancellationToken cancel)
    {
        var skus = TradeReader.CapStyle(body).Value!.Skus;
        if (skus.Count == 0)
            return;
        var rows = await shelf.List(scope.Required, CatalogKinds.CapStyles, null, EveryStyle, cancel);
        var others = rows.Where(row => row.Id != id).Select(row => TradeReader.CapStyle(row.Body).Value!).ToArray();
        for (var i = 0; i < skus.Count; i++)
        {
            if (others.FirstOrDefault(style => style.Skus.Contains(skus[i], StringComparer.OrdinalIgnoreCase)) is { } owner)
                faults.Add(string.Create(CultureInfo.InvariantCulture, $"/skus/{i}"), ViolationCodes.Contradicts, $"The cap style '{owner.Id}' carries this article number.");
        }
    }
}
