//! Collecting endpoints: each is served by actix and described in OpenAPI 3.1 from one statement.

use crate::error::{Error, Problem, ProblemRead};
use crate::problems::{RequestSays, TitleSays};
use crate::who::permit::only;
use actix_web::http::StatusCode;
use actix_web::{HttpResponse, Route, web};
use domain::right::Right;
use serde_json::Value;
use std::collections::BTreeMap;
use utoipa::openapi::path::{
    HttpMethod, OperationBuilder, ParameterBuilder, ParameterIn, PathsBuilder,
};
use utoipa::openapi::request_body::RequestBodyBuilder;
use utoipa::openapi::schema::{ComponentsBuilder, ObjectBuilder, Schema, SchemaType, Type};
use utoipa::openapi::{
    ContentBuilder, InfoBuilder, OpenApiBuilder, PathItem, Ref, RefOr, Required, ResponseBuilder,
};
use utoipa::{IntoParams, ToSchema};

/// The endpoints so far.
#[derive(Default)]
pub struct Api {
    endpoints: Vec<Endpoint>,
    schemas: BTreeMap<String, RefOr<Schema>>,
}

struct Endpoint {
    method: HttpMethod,
    path: &'static str,
    right: Right,
    route: Route,
    operation: OperationBuilder,
}

fn verb(method: &HttpMethod) -> &'static str {
    match method {
        HttpMethod::Get => "GET",
        HttpMethod::Put => "PUT",
        HttpMethod::Delete => "DELETE",
        _ => "POST",
    }
}

/// The description of an endpoint, under way.
pub struct Documented<'a> {
    api: &'a mut Api,
    nth: usize,
}

impl Api {
    /// A GET.
    pub fn get(
        &mut self,
        path: &'static str,
        right: Right,
        says: &str,
        route: Route,
    ) -> Documented<'_> {
        self.add(HttpMethod::Get, path, right, says, route)
    }

    /// A POST.
    pub fn post(
        &mut self,
        path: &'static str,
        right: Right,
        says: &str,
        route: Route,
    ) -> Documented<'_> {
        self.add(HttpMethod::Post, path, right, says, route)
    }

    /// A PUT.
    pub fn put(
        &mut self,
        path: &'static str,
        right: Right,
        says: &str,
        route: Route,
    ) -> Documented<'_> {
        self.add(HttpMethod::Put, path, right, says, route)
    }

    /// A DELETE.
    pub fn delete(
        &mut self,
        path: &'static str,
        right: Right,
        says: &str,
        route: Route,
    ) -> Documented<'_> {
        self.add(HttpMethod::Delete, path, right, says, route)
    }

    /// Every route with the right that it asks.
    pub fn rights(&self) -> Vec<(&'static str, &'static str, Right)> {
        let all = self.endpoints.iter();
        all.map(|one| (verb(&one.method), one.path, one.right))
            .collect()
    }

    fn add(
        &mut self,
        method: HttpMethod,
        path: &'static str,
        right: Right,
        says: &str,
        route: Route,
    ) -> Documented<'_> {
        let verb = verb(&method).to_lowercase();
        let name: String = path
            .chars()
            .filter(|letter| !"{}".contains(*letter))
            .map(|letter| {
                if letter.is_alphanumeric() {
                    letter
                } else {
                    '_'
                }
            })
            .collect();
        let problem = self.schema::<ProblemRead>();
        let content = ContentBuilder::new().schema(Some(problem)).build();
        let refused = ResponseBuilder::new()
            .description("A problem document")
            .content("application/problem+json", content)
            .build();
        let mut operation = OperationBuilder::new()
            .summary(Some(says))
            .description(Some(match right {
                Right::Anyone => "Without signing in.".to_owned(),
                right => format!("Needs the right `{right}`."),
            }))
            .operation_id(Some(format!("{verb}{name}")))
            .response("4XX", refused.clone())
            .response("503", refused);
        for part in path
            .split('/')
            .filter_map(|part| part.strip_prefix('{')?.strip_suffix('}'))
        {
            operation =
                operation.parameter(text_parameter(part, ParameterIn::Path, Required::True, ""));
        }
        self.endpoints.push(Endpoint {
            method,
            path,
            right,
            route,
            operation,
        });
        let nth = self.endpoints.len() - 1;
        Documented { api: self, nth }
    }

    fn schema<T: ToSchema>(&mut self) -> RefOr<Schema> {
        let mut found = vec![(T::name().into_owned(), T::schema())];
        T::schemas(&mut found);
        self.schemas.extend(found);
        RefOr::Ref(Ref::from_schema_name(T::name()))
    }

    /// Registers every endpoint; a path that is there answers 405 to other methods.
    pub fn register(self, config: &mut web::ServiceConfig) {
        // Paths are tried in this order: first those without a part to be read, as a scan's, which cost least.
        let mut by_path: BTreeMap<(bool, &'static str), Vec<(String, Route)>> = BTreeMap::new();
        for endpoint in self.endpoints {
            let verb = verb(&endpoint.method);
            by_path
                .entry((endpoint.path.contains('{'), endpoint.path))
                .or_default()
                .push((verb.to_owned(), only(endpoint.right, endpoint.route)));
        }
        for ((_, path), routes) in by_path {
            let verbs: Vec<String> = routes.iter().map(|(verb, _)| verb.clone()).collect();
            let mut resource = web::resource(path);
            for (_, route) in routes {
                resource = resource.route(route);
            }
            let allow = verbs.join(", ");
            config.service(resource.default_service(web::to(move || {
                let allow = allow.clone();
                async move { not_allowed(&allow) }
            })));
        }
    }

    /// The OpenAPI 3.1 document.
    pub fn document(self) -> Value {
        let mut items: BTreeMap<&str, PathItem> = BTreeMap::new();
        for endpoint in self.endpoints {
            let item = PathItem::new(endpoint.method, endpoint.operation.build());
            match items.get_mut(endpoint.path) {
                Some(known) => known.merge_operations(item),
                None => {
                    items.insert(endpoint.path, item);
                }
            }
        }
        let paths = items
            .into_iter()
            .fold(PathsBuilder::new(), |paths, (path, item)| {
                paths.path(path, item)
            });
        let info = InfoBuilder::new()
            .title("Gambrel")
            .version(env!("CARGO_PKG_VERSION"))
            .description(Some(
                "Lots, packs, steps, labels and traces of a kitchen that buys whole animals.",
            ));
        let document = OpenApiBuilder::new()
            .info(info)
            .paths(paths)
            .components(Some(
                ComponentsBuilder::new()
                    .schemas_from_iter(self.schemas)
                    .build(),
            ))
            .build();
        super::examples::put_into(serde_json::to_value(&document).unwrap_or_default())
    }
}

impl Documented<'_> {
    fn change(self, change: impl FnOnce(OperationBuilder) -> OperationBuilder) -> Self {
        let endpoint = &mut self.api.endpoints[self.nth];
        let operation = std::mem::take(&mut endpoint.operation);
        endpoint.operation = change(operation);
        self
    }

    /// What it takes.
    pub fn takes<T: ToSchema>(self) -> Self {
        let schema = self.api.schema::<T>();
        let content = ContentBuilder::new().schema(Some(schema)).build();
        let body = RequestBodyBuilder::new()
            .content("application/json", content)
            .required(Some(Required::True))
            .build();
        self.change(|operation| operation.request_body(Some(body)))
    }

    /// A file that it takes, of one of some kinds.
    pub fn takes_files(self, kinds: &[&str]) -> Self {
        let body = kinds.iter().fold(RequestBodyBuilder::new(), |body, kind| {
            body.content(*kind, ContentBuilder::new().build())
        });
        let body = body.required(Some(Required::True)).build();
        self.change(|operation| operation.request_body(Some(body)))
    }

    /// What it answers.
    pub fn answers<T: ToSchema>(self, statuses: &[u16], says: &str) -> Self {
        let schema = self.api.schema::<T>();
        let content = || ContentBuilder::new().schema(Some(schema.clone())).build();
        let response = || {
            ResponseBuilder::new()
                .description(says)
                .content("application/json", content())
                .build()
        };
        let responses: Vec<_> = statuses
            .iter()
            .map(|status| (status.to_string(), response()))
            .collect();
        self.change(|operation| {
            responses
                .into_iter()
                .fold(operation, |operation, (status, response)| {
                    operation.response(status, response)
                })
        })
    }

    /// What it answers, or the same as a file of one of some kinds, as the query asks.
    pub fn answers_or_files<T: ToSchema>(self, kinds: &[&str], says: &str) -> Self {
        let schema = self.api.schema::<T>();
        let json = ContentBuilder::new().schema(Some(schema)).build();
        let response = ResponseBuilder::new()
            .description(says)
            .content("application/json", json);
        let response = kinds.iter().fold(response, |response, kind| {
            response.content(*kind, ContentBuilder::new().build())
        });
        self.change(|operation| operation.response("200", response.build()))
    }

    /// Nothing: it is done.
    pub fn answers_nothing(self) -> Self {
        let response = ResponseBuilder::new().description("Done").build();
        self.change(|operation| operation.response("204", response))
    }

    /// A file that it answers.
    pub fn answers_file(self, kind: &str, says: &str) -> Self {
        let response = ResponseBuilder::new()
            .description(says)
            .content(kind, ContentBuilder::new().build())
            .build();
        self.change(|operation| operation.response("200", response))
    }

    /// A value of the query.
    pub fn query(self, name: &str, says: &str) -> Self {
        self.change(|operation| {
            operation.parameter(text_parameter(
                name,
                ParameterIn::Query,
                Required::False,
                says,
            ))
        })
    }

    /// The values of the query that it reads, as the fields of `T` describe them.
    pub fn reads<T: IntoParams>(self) -> Self {
        let fields = T::into_params(|| None);
        fields.into_iter().fold(self, |documented, field| {
            documented.query(
                &field.name,
                field.description.as_deref().unwrap_or_default(),
            )
        })
    }

    /// A header.
    pub fn header(self, name: &str, says: &str) -> Self {
        self.change(|operation| {
            operation.parameter(text_parameter(
                name,
                ParameterIn::Header,
                Required::False,
                says,
            ))
        })
    }
}

fn text_parameter(
    name: &str,
    parameter_in: ParameterIn,
    required: Required,
    says: &str,
) -> ParameterBuilder {
    let schema = ObjectBuilder::new().schema_type(SchemaType::new(Type::String));
    let described = ParameterBuilder::new()
        .name(name)
        .parameter_in(parameter_in)
        .required(required)
        .schema(Some(schema));
    if says.is_empty() {
        described
    } else {
        described.description(Some(says))
    }
}

/// 405, with what would do.
pub fn not_allowed(allow: &str) -> HttpResponse {
    let methods = allow.to_owned();
    let mut response = HttpResponse::from_error(Error::from(Problem::new(
        StatusCode::METHOD_NOT_ALLOWED,
        "method",
        TitleSays::Method,
        RequestSays::Method { methods },
    )));
    if let Ok(value) = allow.parse() {
        response
            .headers_mut()
            .insert(actix_web::http::header::ALLOW, value);
    }
    response
}
