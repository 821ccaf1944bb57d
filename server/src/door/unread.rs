//! What of a body nobody reads: a path that is none, a refusal at the door, a form that is too large. A little
//! of it is taken in so that the connection goes on; of what does not end the answer goes out, and then the
//! connection is closed. Left to itself, the library would read an endless body for ever.

use actix_web::HttpMessage;
use actix_web::body::{BodySize, BoxBody, MessageBody};
use actix_web::dev::{Payload, ServiceRequest, ServiceResponse};
use actix_web::error::PayloadError;
use actix_web::http::{ConnectionType, Version, header};
use actix_web::rt::time::{Sleep, sleep, timeout};
use actix_web::web::Bytes;
use futures_util::{Stream, StreamExt};
use std::cell::RefCell;
use std::pin::Pin;
use std::rc::Rc;
use std::task::{Context, Poll, ready};
use std::time::Duration;

/// How long any body may take, whoever reads it.
const SLOWEST: Duration = Duration::from_secs(12);
/// What is taken in before an answer, so that the connection can go on.
const A_LITTLE: (usize, Duration) = (64 << 10, Duration::from_millis(100));
/// What is taken in after it, for those who read no answer before they have sent all.
const AFTERWARDS: (usize, Duration) = (16 << 20, Duration::from_secs(2));

/// A body that comes in: one end is with whoever reads it, the other here.
#[derive(Clone)]
pub struct Incoming(Rc<RefCell<Arriving>>);

struct Arriving {
    payload: Payload,
    until: Pin<Box<Sleep>>,
    ended: bool,
}

impl Stream for Incoming {
    type Item = Result<Bytes, PayloadError>;

    fn poll_next(self: Pin<&mut Self>, cx: &mut Context<'_>) -> Poll<Option<Self::Item>> {
        let mut arriving = self.0.borrow_mut();
        if arriving.ended {
            return Poll::Ready(None);
        }
        let part = match arriving.payload.poll_next_unpin(cx) {
            Poll::Ready(part) => part,
            Poll::Pending => {
                ready!(arriving.until.as_mut().poll(cx));
                Some(Err(PayloadError::Incomplete(None)))
            }
        };
        arriving.ended = !matches!(part, Some(Ok(_)));
        Poll::Ready(part)
    }
}

/// Looks after the body of a request, if it has one.
pub fn look_after(request: &mut ServiceRequest) -> Option<Incoming> {
    let headers = request.headers();
    let length = headers.get(header::CONTENT_LENGTH);
    let has_one = length.is_some_and(|length| length.as_bytes() != b"0")
        || headers.contains_key(header::TRANSFER_ENCODING)
        || request.version() == Version::HTTP_2;
    if !has_one {
        return None;
    }
    let payload = request.take_payload();
    let until = Box::pin(sleep(SLOWEST));
    let incoming = Incoming(Rc::new(RefCell::new(Arriving {
        payload,
        until,
        ended: false,
    })));
    let other_end: Pin<Box<dyn Stream<Item = _>>> = Box::pin(incoming.clone());
    request.set_payload(Payload::from(other_end));
    Some(incoming)
}

/// An answer, after which the connection is closed if the body does not end soon.
pub async fn see_out(
    mut response: ServiceResponse<BoxBody>,
    mut incoming: Incoming,
) -> ServiceResponse<BoxBody> {
    let (most, patience) = A_LITTLE;
    let drained = timeout(patience, async {
        let mut bytes = 0;
        while let Some(part) = incoming.next().await {
            bytes += part.map_or(0, |part| part.len());
            if bytes > most {
                break;
            }
        }
    });
    let _ = drained.await;
    if incoming.0.borrow().ended {
        return response;
    }
    let head = response.response_mut().head_mut();
    head.set_connection_type(ConnectionType::Close);
    response.map_body(|_, body| {
        BoxBody::new(Closing {
            body,
            said: false,
            incoming,
            bytes: 0,
            until: Box::pin(sleep(AFTERWARDS.1)),
        })
    })
}

/// An answer that goes out while its request still comes in.
struct Closing {
    body: BoxBody,
    /// Has all of it gone out?
    said: bool,
    incoming: Incoming,
    bytes: usize,
    until: Pin<Box<Sleep>>,
}

impl MessageBody for Closing {
    type Error = Box<dyn std::error::Error>;

    fn size(&self) -> BodySize {
        self.body.size()
    }

    fn poll_next(
        mut self: Pin<&mut Self>,
        cx: &mut Context<'_>,
    ) -> Poll<Option<Result<Bytes, Self::Error>>> {
        if !self.said {
            let part = ready!(Pin::new(&mut self.body).poll_next(cx));
            match part {
                Some(part) => return Poll::Ready(Some(part)),
                None => self.said = true,
            }
        }
        while self.bytes <= AFTERWARDS.0 {
            match self.incoming.poll_next_unpin(cx) {
                Poll::Ready(Some(Ok(part))) => self.bytes += part.len(),
                Poll::Ready(_) => return Poll::Ready(None),
                Poll::Pending => {
                    ready!(self.until.as_mut().poll(cx));
                    return Poll::Ready(None);
                }
            }
        }
        Poll::Ready(None)
    }
}
