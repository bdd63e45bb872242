using System.Net;
using System.Text.Json;
using System.Text.Json.Nodes;
using CapPrep.Service.Tests.Intake;
using CapPrep.TestKit.Service;
using Shouldly;

namespace CapPrep.Service.Tests.Bench;

/// <summary>What a caller does with a job.</summary>
internal static class Flow
{
    /// <summary>Sends a design and waits for its end.</summary>
    public static async Task<JsonElement> Work(this ServiceUnderTest service, string ticket, byte[] tape)
    {
        var answer = await service.Client.Post(ticket, tape, ("Prefer", "wait=20"));
        answer.Status.ShouldBe(HttpStatusCode.OK, answer.Body.ToString());
        return answer.Body;
    }

    public static Task<JsonElement> WorkCrest(this ServiceUnderTest service, string order, params (string Name, JsonNode? Value)[] more) =>
        service.Work(Upload.Ticket(order, more), Upload.Tape);

    public static async Task<Answer> Get(this HttpClient client, string path, params (string Name, string Value)[] headers)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, path);
        foreach (var (name, value) in headers)
            request.Headers.TryAddWithoutValidation(name, value);
        using var response = await client.SendAsync(request);
        return await Answer.Of(response);
    }

    public static string Id(this JsonElement job) => job.GetProperty("id").GetString()!;

    public static string Text(this JsonElement job, string member) => job.GetProperty(member).GetString()!;

    /// <summary>Looks until something is so; gives up after a minute or more.</summary>
    public static async Task Until(Func<Task<bool>> reached, string what)
    {
        for (var tries = 0; tries < 600; tries++)
        {
            if (await reached())
                return;
            await Task.Delay(100);
        }

        throw new TimeoutException(what);
    }
}
