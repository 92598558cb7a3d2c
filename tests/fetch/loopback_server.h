#pragma once

#include <atomic>
#include <deque>
#include <map>
#include <mutex>
#include <string>
#include <thread>
#include <vector>

namespace slabtide::test {

/// What the server does with one request.
struct Answer {
  std::string bytes;  ///< sent unchanged: status line, headers and body
  /// Sends one byte at a time, too slowly for any limit, until the client gives up.
  bool trickles = false;
};

/// A complete answer with its length.
Answer answer(int status, const std::string& body, const std::string& type = "application/geo+json",
              const std::string& headers = "");

struct Request {
  std::string path;     ///< including the query
  std::string headers;  ///< all lines, as received
};

/// A web server on 127.0.0.1 that gives scripted answers to one connection after another. Stops
/// when the object is destroyed.
class LoopbackServer {
 public:
  LoopbackServer();
  ~LoopbackServer();
  LoopbackServer(const LoopbackServer&) = delete;
  LoopbackServer& operator=(const LoopbackServer&) = delete;

  /// "http://127.0.0.1:PORT".
  std::string base_url() const;
  /// Adds an answer for a path without its query; the last one given is repeated. A path without
  /// answers gets status 418.
  void will_answer(const std::string& path, Answer answer);
  /// Replaces all answers of the path by this one.
  void only_answers(const std::string& path, Answer answer);
  std::vector<Request> requests();

 private:
  void serve();
  void serve_one(int connection);
  Answer next_answer(const Request& request);

  int listener_ = -1;
  int port_ = 0;
  std::atomic<bool> stopping_{false};
  std::mutex mutex_;  ///< guards the two below
  std::map<std::string, std::deque<Answer>> answers_;
  std::vector<Request> requests_;
  std::thread thread_;
};

}  // namespace slabtide::test
