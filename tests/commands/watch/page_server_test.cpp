// What the report's server answers, asked over a plain socket.

#include "commands/watch/page_server.hpp"

#include <arpa/inet.h>
#include <gtest/gtest.h>
#include <netinet/in.h>
#include <sys/socket.h>
#include <sys/time.h>
#include <unistd.h>

#include "commands/command_run.hpp"
#include "commands/watched_program.hpp"

namespace linewright {
namespace {

using test::contains;

unsigned short port_of(const std::string& address) {
  return static_cast<unsigned short>(std::stoi(address.substr(address.rfind(':') + 1)));
}

/// All that comes back for a request; empty where nothing listens.
std::string asked(unsigned short port, const std::string& request) {
  const int socket = ::socket(AF_INET, SOCK_STREAM, 0);
  const timeval patience{60, 0};
  ::setsockopt(socket, SOL_SOCKET, SO_RCVTIMEO, &patience, sizeof patience);
  sockaddr_in there{};
  there.sin_family = AF_INET;
  there.sin_port = htons(port);
  there.sin_addr.s_addr = htonl(INADDR_LOOPBACK);
  std::string answer;
  if (::connect(socket, reinterpret_cast<sockaddr*>(&there), sizeof there) == 0 &&
      ::send(socket, request.data(), request.size(), MSG_NOSIGNAL) >= 0) {
    char bytes[4096];
    for (ssize_t got = 0; (got = ::recv(socket, bytes, sizeof bytes, 0)) > 0;)
      answer.append(bytes, static_cast<std::size_t>(got));
  }
  ::close(socket);
  return answer;
}

std::string request_for(const std::string& what, const std::string& host) {
  return what + " HTTP/1.1\r\nHost: " + host + "\r\nConnection: close\r\n\r\n";
}

class PageServed : public testing::Test {
 protected:
  PageServed() : server_(std::move(*PageServer::started())), port_(port_of(server_->address())) {
    server_->show("<p>the page</p>");
  }
  std::string host() const { return "127.0.0.1:" + std::to_string(port_); }

  std::unique_ptr<PageServer> server_;
  unsigned short port_;
};

TEST_F(PageServed, IsThePageLastShown) {
  const std::string first = asked(port_, request_for("GET /", host()));
  EXPECT_TRUE(first.starts_with("HTTP/1.1 200 ")) << first;
  EXPECT_TRUE(first.ends_with("\r\n\r\n<p>the page</p>")) << first;
  EXPECT_TRUE(contains(first, "Cache-Control: no-store\r\n"));
  server_->show("<p>another</p>");
  EXPECT_TRUE(asked(port_, request_for("GET /", host())).ends_with("<p>another</p>"));
  const std::string by_name = "localhost:" + std::to_string(port_);
  EXPECT_TRUE(asked(port_, request_for("GET /", by_name)).ends_with("<p>another</p>"));
}

TEST_F(PageServed, IsGivenWholeHoweverLong) {
  const std::string page(3'000'000, 'x');
  server_->show(page);
  EXPECT_TRUE(asked(port_, request_for("GET /", host())).ends_with("\r\n\r\n" + page));
}

// RFC 9110 section 15.5.20: a request for another host is misdirected. A site that has its name
// point at 127.0.0.1 reads nothing.
TEST_F(PageServed, IsNotGivenUnderTheNameOfAnotherHost) {
  for (const std::string host :
       {"example.org", "127.0.0.1", "127.0.0.1:1", "localhost", "127.0.0.1.example.org:80", ""}) {
    const std::string answer = asked(port_, request_for("GET /", host));
    EXPECT_TRUE(answer.starts_with("HTTP/1.1 421 ")) << host << answer;
    EXPECT_FALSE(contains(answer, "the page")) << host;
  }
}

TEST_F(PageServed, HasNoOtherPathAndNoOtherMethod) {
  EXPECT_TRUE(asked(port_, request_for("GET /../etc/passwd", host())).starts_with("HTTP/1.1 404 "));
  EXPECT_TRUE(asked(port_, request_for("GET /?a", host())).starts_with("HTTP/1.1 404 "));
  const std::string posted = asked(port_, request_for("POST /", host()));
  EXPECT_TRUE(posted.starts_with("HTTP/1.1 405 ")) << posted;
  EXPECT_TRUE(contains(posted, "Allow: GET, HEAD\r\n"));
  const std::string head = asked(port_, request_for("HEAD /", host()));
  EXPECT_TRUE(head.starts_with("HTTP/1.1 200 ") && head.ends_with("\r\n\r\n")) << head;
}

TEST_F(PageServed, OutlivesWhatIsNoRequest) {
  EXPECT_EQ(asked(port_, "\x16\x03\x01 nothing that a browser says\r\n\r\n"), "");
  EXPECT_EQ(asked(port_, "GET / HTTP/1.1\r\nX: " + std::string(100'000, 'y') + "\r\n\r\n"), "");
  EXPECT_TRUE(asked(port_, request_for("GET /", host())).ends_with("<p>the page</p>"));
}

TEST(PageServer, ListensNoMoreWhenItIsGone) {
  unsigned short port = 0;
  {
    const auto server = PageServer::started();
    ASSERT_TRUE(server);
    port = port_of((*server)->address());
  }
  EXPECT_EQ(asked(port, request_for("GET /", "127.0.0.1:" + std::to_string(port))), "");
}

TEST(WatchedReport, IsServedAsTheFilesAreSaved) {
  const test::StarterCopy project;
  test::WatchedProgram program({project.root(), "--serve", "--quiet"});
  ASSERT_TRUE(program.says("the report is at http://127.0.0.1:")) << program.said();
  ASSERT_TRUE(program.says("/\n"));
  const std::string& said = program.said();
  const std::size_t address = said.find("http://127.0.0.1:");
  const unsigned short port = port_of(said.substr(address, said.find("/\n", address) - address));
  const std::string request = request_for("GET /", "127.0.0.1:" + std::to_string(port));
  EXPECT_TRUE(contains(asked(port, request), "data-watched=\"yes\""));
  EXPECT_FALSE(contains(asked(port, request), "<article class=\"finding fail"));
  project.bend_too_tightly();
  ASSERT_TRUE(program.says("bend-radius")) << program.said();
  // The page is shown before the terminal is told.
  EXPECT_TRUE(contains(asked(port, request), "<article class=\"finding fail"));
  EXPECT_EQ(program.code_after(SIGTERM), 1);
}

}  // namespace
}  // namespace linewright
