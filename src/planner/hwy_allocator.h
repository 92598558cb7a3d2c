#pragma once

// Highway's allocator for the planner: Debian has its library for this machine alone.
