using System.Net;
using Board.Tests.Pages;

namespace Board.Tests;

/// <summary>How the daemon serves the page.</summary>
[Collection(SharedBayTests.Name)]
public class ServingTests(SharedBay bay)
{
    [Theory]
    [MemberData(nameof(Views.Each), MemberType = typeof(Views))]
    public async Task A_view_can_be_opened_by_its_address_and_is_never_an_old_one(string path)
    {
        using var response = await Get(path);
        Assert.Equal(HttpStatusCode.OK, response.StatusCode);
        Assert.Equal("text/html", response.Content.Headers.ContentType?.MediaType);
        Assert.True(response.Headers.CacheControl?.NoCache);
    }

    [Fact]
    public async Task A_file_that_is_not_there_is_not_answered_with_the_page()
    {
        using var response = await Get("_framework/nothing.js");
        Assert.Equal(HttpStatusCode.NotFound, response.StatusCode);
    }

    [Fact]
    public async Task The_runtime_goes_over_the_wire_compressed()
    {
        using var response = await Get("_framework/blazor.webassembly.js");
        Assert.Equal(HttpStatusCode.OK, response.StatusCode);
        Assert.Contains(response.Content.Headers.ContentEncoding, e => e is "br" or "gzip");
    }

    private async Task<HttpResponseMessage> Get(string path)
    {
        using var client = new HttpClient();
        using var request = new HttpRequestMessage(HttpMethod.Get, $"http://127.0.0.1:{bay.Rig.PagePort}/{path}");
        request.Headers.AcceptEncoding.ParseAdd("br, gzip");
        return await client.SendAsync(request);
    }
}
