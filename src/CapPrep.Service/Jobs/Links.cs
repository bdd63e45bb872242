using CapPrep.Service.Plumbing;

namespace CapPrep.Service.Jobs;

/// <summary>Addresses of a job's things: paths, or whole addresses where the public one is set.</summary>
internal sealed class Links(Settings settings)
{
    private readonly string _front = settings.Http.PublicUrl?.ToString().TrimEnd('/') ?? "";

    public string Job(string id) => $"{_front}/v1/jobs/{id}";

    public string Result(string id) => Job(id) + "/result";

    public string Card(string id) => Job(id) + "/card";

    public string Proof(string id) => Job(id) + "/proof";

    public string Tape(string id) => Job(id) + "/tape";

    public string ReceivedTape(string id) => Tape(id) + "?version=received";

    /// <summary>Every job of the order, newest first.</summary>
    public string Order(string orderNumber) => $"{_front}/v1/jobs?orderNumber={Uri.EscapeDataString(orderNumber)}";
}
