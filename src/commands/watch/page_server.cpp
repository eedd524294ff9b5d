#include "commands/watch/page_server.hpp"

#include <boost/asio/io_context.hpp>
#include <boost/asio/ip/tcp.hpp>
#include <boost/beast/core.hpp>
#include <boost/beast/http.hpp>
#include <chrono>
#include <mutex>
#include <thread>
#include <utility>

namespace linewright {

namespace {

namespace asio = boost::asio;
namespace beast = boost::beast;
namespace http = beast::http;
using Tcp = asio::ip::tcp;

/// For a request to arrive, and for a page to be taken.
constexpr std::chrono::seconds connection_patience{10};
constexpr std::uint64_t most_request_bytes = 4096;

/// The page, handed from the thread that writes it to the one that serves it.
class ShownPage {
 public:
  void set(std::string page) {
    const std::lock_guard lock(mutex_);
    page_ = std::make_shared<const std::string>(std::move(page));
  }
  std::shared_ptr<const std::string> get() const {
    const std::lock_guard lock(mutex_);
    return page_;
  }

 private:
  mutable std::mutex mutex_;
  std::shared_ptr<const std::string> page_ = std::make_shared<const std::string>();
};

using Answer = http::response<http::string_body>;
using Request = http::request<http::empty_body>;

bool names_this_host(beast::string_view host, unsigned short port) {
  const std::string suffix = ":" + std::to_string(port);
  return host == "127.0.0.1" + suffix || host == "localhost" + suffix;
}

Answer answer_to(const Request& request, unsigned short port, const ShownPage& page) {
  Answer answer{http::status::ok, request.version()};
  answer.set(http::field::cache_control, "no-store");
  answer.set(http::field::content_type, "text/html; charset=utf-8");
  answer.set("X-Content-Type-Options", "nosniff");
  answer.set("Cross-Origin-Resource-Policy", "same-origin");
  answer.keep_alive(false);
  const bool reads = request.method() == http::verb::get || request.method() == http::verb::head;
  if (!names_this_host(request[http::field::host], port))
    answer.result(http::status::misdirected_request);
  else if (!reads)
    answer.result(http::status::method_not_allowed);
  else if (request.target() != "/")
    answer.result(http::status::not_found);
  else
    answer.body() = *page.get();
  if (answer.result() == http::status::method_not_allowed)
    answer.set(http::field::allow, "GET, HEAD");
  answer.prepare_payload();
  if (request.method() == http::verb::head) answer.body().clear();
  return answer;
}

/// One request and its answer; it keeps itself until that is done or takes too long.
class Connection : public std::enable_shared_from_this<Connection> {
 public:
  Connection(Tcp::socket socket, unsigned short port, const ShownPage& page)
      : stream_(std::move(socket)), port_(port), page_(page) {}

  void begin() {
    stream_.expires_after(connection_patience);
    parser_.header_limit(most_request_bytes);
    http::async_read_header(stream_, buffer_, parser_,
                            [self = shared_from_this()](beast::error_code error, std::size_t) {
                              if (!error) self->answer();
                            });
  }

 private:
  void answer() {
    answer_ = answer_to(parser_.get(), port_, page_);
    stream_.expires_after(connection_patience);
    http::async_write(stream_, answer_,
                      [self = shared_from_this()](beast::error_code, std::size_t) {
                        beast::error_code ignored;
                        self->stream_.socket().shutdown(Tcp::socket::shutdown_send, ignored);
                      });
  }

  beast::tcp_stream stream_;
  beast::flat_buffer buffer_;
  http::request_parser<http::empty_body> parser_;
  Answer answer_;
  unsigned short port_;
  const ShownPage& page_;
};

}  // namespace

struct PageServer::Listening {
  asio::io_context context{1};
  Tcp::acceptor acceptor{context};
  unsigned short port = 0;
  ShownPage page;
  std::thread thread;

  beast::error_code open() {
    beast::error_code error;
    acceptor.open(Tcp::v4(), error);
    if (!error) acceptor.bind({asio::ip::address_v4::loopback(), 0}, error);
    if (!error) acceptor.listen(asio::socket_base::max_listen_connections, error);
    if (!error) port = acceptor.local_endpoint(error).port();
    return error;
  }

  void accept() {
    acceptor.async_accept([this](beast::error_code error, Tcp::socket socket) {
      if (error == asio::error::operation_aborted) return;
      if (!error) std::make_shared<Connection>(std::move(socket), port, page)->begin();
      accept();
    });
  }
};

PageServer::PageServer() : listening_(std::make_unique<Listening>()) {}

PageServer::~PageServer() {
  listening_->context.stop();
  if (listening_->thread.joinable()) listening_->thread.join();
}

Expected<std::unique_ptr<PageServer>, std::string> PageServer::started() {
  std::unique_ptr<PageServer> server(new PageServer());
  Listening& listening = *server->listening_;
  if (const beast::error_code error = listening.open())
    return "no page can be served at 127.0.0.1: " + error.message();
  listening.accept();
  listening.thread = std::thread([&context = listening.context] { context.run(); });
  return server;
}

std::string PageServer::address() const {
  return "http://127.0.0.1:" + std::to_string(listening_->port) + "/";
}

void PageServer::show(std::string page) {
  listening_->page.set(std::move(page));
}

}  // namespace linewright
