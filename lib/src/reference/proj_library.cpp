#include "reference/proj_library.hpp"

#include <dlfcn.h>
#include <fmt/format.h>

#include "sweepwright/base/error.hpp"

namespace sweepwright::reference {
namespace {

Error not_here(std::string message) {
  return Error(ErrorCode::impossible, std::move(message),
               "install PROJ with its data (Debian: libproj25 and proj-data), or give the position "
               "in WGS 84");
}

template <typename Function>
void find(void* library, const char* name, Function& function) {
  // POSIX promises that an object pointer of dlsym() holds a function.
  function = reinterpret_cast<Function>(dlsym(library, name));
  if (!function) throw not_here(fmt::format("{} has no {}", SWEEPWRIGHT_PROJ_LIBRARY, name));
}

ProjLibrary load() {
  void* library = dlopen(SWEEPWRIGHT_PROJ_LIBRARY, RTLD_NOW | RTLD_LOCAL);
  if (!library) {
    throw not_here(
        fmt::format("other reference systems need PROJ, and {} is not on this computer ({})",
                    SWEEPWRIGHT_PROJ_LIBRARY, dlerror()));
  }
  ProjLibrary proj{};
  const auto take = [&](const char* name, auto& function) { find(library, name, function); };
  take("proj_context_create", proj.context_create);
  take("proj_context_destroy", proj.context_destroy);
  take("proj_context_get_database_metadata", proj.context_get_database_metadata);
  take("proj_context_set_enable_network", proj.context_set_enable_network);
  take("proj_coordoperation_get_accuracy", proj.coordoperation_get_accuracy);
  take("proj_coordoperation_get_grid_used", proj.coordoperation_get_grid_used);
  take("proj_coordoperation_get_grid_used_count", proj.coordoperation_get_grid_used_count);
  take("proj_coordoperation_has_ballpark_transformation",
       proj.coordoperation_has_ballpark_transformation);
  take("proj_coordoperation_is_instantiable", proj.coordoperation_is_instantiable);
  take("proj_create_from_database", proj.create_from_database);
  take("proj_create_operation_factory_context", proj.create_operation_factory_context);
  take("proj_create_operations", proj.create_operations);
  take("proj_crs_get_coordinate_system", proj.crs_get_coordinate_system);
  take("proj_crs_get_geodetic_crs", proj.crs_get_geodetic_crs);
  take("proj_cs_get_axis_count", proj.cs_get_axis_count);
  take("proj_cs_get_axis_info", proj.cs_get_axis_info);
  take("proj_destroy", proj.destroy);
  take("proj_errno_reset", proj.errno_reset);
  take("proj_get_area_of_use", proj.get_area_of_use);
  take("proj_get_name", proj.get_name);
  take("proj_get_type", proj.get_type);
  take("proj_info", proj.info);
  take("proj_is_deprecated", proj.is_deprecated);
  take("proj_list_destroy", proj.list_destroy);
  take("proj_list_get", proj.list_get);
  take("proj_list_get_count", proj.list_get_count);
  take("proj_log_func", proj.log_func);
  take("proj_operation_factory_context_destroy", proj.operation_factory_context_destroy);
  take("proj_operation_factory_context_set_grid_availability_use",
       proj.operation_factory_context_set_grid_availability_use);
  take("proj_operation_factory_context_set_spatial_criterion",
       proj.operation_factory_context_set_spatial_criterion);
  take("proj_trans", proj.trans);
  return proj;
}

}  // namespace

const ProjLibrary& proj_library() {
  static const ProjLibrary library = load();  // stays until the program ends
  return library;
}

ProjContext make_context() {
  const ProjLibrary& proj = proj_library();
  ProjContext context(proj.context_create());
  if (!context) throw not_here("PROJ does not start");
  // Errors come back as our own; PROJ would also print them.
  proj.log_func(context.get(), nullptr, [](void*, int, const char*) {});
  proj.context_set_enable_network(context.get(), 0);
  if (!proj.context_get_database_metadata(context.get(), "EPSG.VERSION")) {
    throw not_here("PROJ does not find its database proj.db");
  }
  return context;
}

ProjList operations(PJ_CONTEXT* context, const PJ* from, const PJ* to) {
  const ProjLibrary& proj = proj_library();
  const std::unique_ptr<PJ_OPERATION_FACTORY_CONTEXT, ProjDelete> factory(
      proj.create_operation_factory_context(context, nullptr));
  proj.operation_factory_context_set_spatial_criterion(context, factory.get(),
                                                       PROJ_SPATIAL_CRITERION_PARTIAL_INTERSECTION);
  proj.operation_factory_context_set_grid_availability_use(context, factory.get(),
                                                           PROJ_GRID_AVAILABILITY_IGNORED);
  return ProjList(proj.create_operations(context, from, to, factory.get()));
}

}  // namespace sweepwright::reference
