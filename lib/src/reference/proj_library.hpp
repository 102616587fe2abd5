// PROJ, loaded when first asked for: the functions of proj.h that this room calls, and owners for
// what they return.
#pragma once

#include <proj.h>

#include <memory>
#include <string>

namespace sweepwright::reference {

/// Each member is the function of PROJ that is named after `proj_`.
struct ProjLibrary {
  decltype(&::proj_context_create) context_create;
  decltype(&::proj_context_destroy) context_destroy;
  decltype(&::proj_context_get_database_metadata) context_get_database_metadata;
  decltype(&::proj_context_set_enable_network) context_set_enable_network;
  decltype(&::proj_coordoperation_get_accuracy) coordoperation_get_accuracy;
  decltype(&::proj_coordoperation_get_grid_used) coordoperation_get_grid_used;
  decltype(&::proj_coordoperation_get_grid_used_count) coordoperation_get_grid_used_count;
  decltype(&::proj_coordoperation_has_ballpark_transformation)
      coordoperation_has_ballpark_transformation;
  decltype(&::proj_coordoperation_is_instantiable) coordoperation_is_instantiable;
  decltype(&::proj_create_from_database) create_from_database;
  decltype(&::proj_create_operation_factory_context) create_operation_factory_context;
  decltype(&::proj_create_operations) create_operations;
  decltype(&::proj_crs_get_coordinate_system) crs_get_coordinate_system;
  decltype(&::proj_crs_get_geodetic_crs) crs_get_geodetic_crs;
  decltype(&::proj_cs_get_axis_count) cs_get_axis_count;
  decltype(&::proj_cs_get_axis_info) cs_get_axis_info;
  decltype(&::proj_destroy) destroy;
  decltype(&::proj_errno_reset) errno_reset;
  decltype(&::proj_get_area_of_use) get_area_of_use;
  decltype(&::proj_get_name) get_name;
  decltype(&::proj_get_type) get_type;
  decltype(&::proj_info) info;
  decltype(&::proj_is_deprecated) is_deprecated;
  decltype(&::proj_list_destroy) list_destroy;
  decltype(&::proj_list_get) list_get;
  decltype(&::proj_list_get_count) list_get_count;
  decltype(&::proj_log_func) log_func;
  decltype(&::proj_operation_factory_context_destroy) operation_factory_context_destroy;
  decltype(&::proj_operation_factory_context_set_grid_availability_use)
      operation_factory_context_set_grid_availability_use;
  decltype(&::proj_operation_factory_context_set_spatial_criterion)
      operation_factory_context_set_spatial_criterion;
  decltype(&::proj_trans) trans;
};

/// Loads PROJ on the first call. Throws Error(impossible) when it is not on this computer.
const ProjLibrary& proj_library();

struct ProjDelete {
  void operator()(PJ_CONTEXT* context) const { proj_library().context_destroy(context); }
  void operator()(PJ* object) const { proj_library().destroy(object); }
  void operator()(PJ_OBJ_LIST* list) const { proj_library().list_destroy(list); }
  void operator()(PJ_OPERATION_FACTORY_CONTEXT* factory) const {
    proj_library().operation_factory_context_destroy(factory);
  }
};
using ProjContext = std::unique_ptr<PJ_CONTEXT, ProjDelete>;
using ProjObject = std::unique_ptr<PJ, ProjDelete>;
using ProjList = std::unique_ptr<PJ_OBJ_LIST, ProjDelete>;

/// A silent context that never uses the network. Throws Error(impossible) without PROJ's database.
ProjContext make_context();

/// The operations from one system to another; those whose grids are missing included.
ProjList operations(PJ_CONTEXT* context, const PJ* from, const PJ* to);

}  // namespace sweepwright::reference
