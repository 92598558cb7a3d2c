#include "fetch/loopback_server.h"

#include <netinet/in.h>
#include <poll.h>
#include <sys/socket.h>
#include <unistd.h>

#include <array>
#include <cstdlib>
#include <stdexcept>
#include <string_view>
#include <utility>

#include <fmt/format.h>

namespace slabtide::test {
namespace {

constexpr int poll_ms = 20;
/// Ten bytes a second.
constexpr int trickle_ms = 100;

bool send_all(int connection, std::string_view bytes) {
  while (!bytes.empty()) {
    const ssize_t sent = ::send(connection, bytes.data(), bytes.size(), MSG_NOSIGNAL);
    if (sent <= 0) return false;
    bytes.remove_prefix(static_cast<std::size_t>(sent));
  }
  return true;
}

/// Waits a little; true if the client has hung up meanwhile.
bool hung_up_after(int connection, int wait_ms) {
  pollfd state{.fd = connection, .events = POLLIN, .revents = 0};
  if (::poll(&state, 1, wait_ms) <= 0) return false;
  char byte = 0;
  return ::recv(connection, &byte, 1, MSG_PEEK) <= 0;
}

/// The head of a request; empty if the client sends none. Input that does not begin like a request,
/// such as the start of https, is returned as it is.
std::string read_head(int connection) {
  std::string head;
  std::array<char, 4096> chunk{};
  while (head.find("\r\n\r\n") == std::string::npos) {
    if (!head.empty() && head.front() != 'G') return head;
    const ssize_t got = ::recv(connection, chunk.data(), chunk.size(), 0);
    if (got <= 0) return {};
    head.append(chunk.data(), static_cast<std::size_t>(got));
  }
  return head;
}

Request request_of(const std::string& head) {
  const std::size_t start = head.find(' ') + 1;
  return {head.substr(start, head.find(' ', start) - start), head.substr(head.find('\n') + 1)};
}

}  // namespace

Answer answer(int status, const std::string& body, const std::string& type,
              const std::string& headers) {
  return {.bytes = fmt::format("HTTP/1.1 {} Word\r\nContent-Type: {}\r\nContent-Length: {}\r\n"
                               "Connection: close\r\n{}\r\n{}",
                               status, type, body.size(), headers, body)};
}

LoopbackServer::LoopbackServer() {
  ::setenv("no_proxy", "*", 1);  // a proxy could not reach this server
  listener_ = ::socket(AF_INET, SOCK_STREAM | SOCK_CLOEXEC, 0);
  sockaddr_in address{};
  address.sin_family = AF_INET;
  address.sin_addr.s_addr = htonl(INADDR_LOOPBACK);
  socklen_t size = sizeof address;
  auto* const generic = reinterpret_cast<sockaddr*>(&address);
  if (listener_ < 0 || ::bind(listener_, generic, size) != 0 || ::listen(listener_, 8) != 0 ||
      ::getsockname(listener_, generic, &size) != 0)
    throw std::runtime_error{"no server on loopback"};
  port_ = ntohs(address.sin_port);
  thread_ = std::thread{[this] { serve(); }};
}

LoopbackServer::~LoopbackServer() {
  stopping_ = true;
  thread_.join();
  ::close(listener_);
}

std::string LoopbackServer::base_url() const { return fmt::format("http://127.0.0.1:{}", port_); }

void LoopbackServer::will_answer(const std::string& path, Answer answer) {
  const std::lock_guard lock{mutex_};
  answers_[path].push_back(std::move(answer));
}

void LoopbackServer::only_answers(const std::string& path, Answer answer) {
  const std::lock_guard lock{mutex_};
  answers_[path] = {std::move(answer)};
}

std::vector<Request> LoopbackServer::requests() {
  const std::lock_guard lock{mutex_};
  return requests_;
}

void LoopbackServer::serve() {
  while (!stopping_) {
    pollfd state{.fd = listener_, .events = POLLIN, .revents = 0};
    if (::poll(&state, 1, poll_ms) <= 0) continue;
    const int connection = ::accept(listener_, nullptr, nullptr);
    if (connection < 0) continue;
    serve_one(connection);
    ::close(connection);
  }
}

void LoopbackServer::serve_one(int connection) {
  const std::string head = read_head(connection);
  if (head.empty()) return;
  const Answer reply = next_answer(request_of(head));
  if (!reply.trickles) {
    send_all(connection, reply.bytes);
    return;
  }
  for (std::size_t i = 0; i < reply.bytes.size() && !stopping_; ++i) {
    if (!send_all(connection, reply.bytes.substr(i, 1))) return;
    if (hung_up_after(connection, trickle_ms)) return;
  }
}

Answer LoopbackServer::next_answer(const Request& request) {
  const std::lock_guard lock{mutex_};
  requests_.push_back(request);
  std::deque<Answer>& answers = answers_[request.path.substr(0, request.path.find('?'))];
  if (answers.empty()) return answer(418, "no such path in the script", "text/plain");
  Answer next = answers.front();
  if (answers.size() > 1) answers.pop_front();
  return next;
}

}  // namespace slabtide::test
